/** What is in the tray: baths and what was added to them. */
@NullMarked
package trayward.host.bath;

import org.jspecify.annotations.NullMarked;
