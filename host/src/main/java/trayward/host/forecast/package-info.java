/** When a print's first blacks come, when to pull it, and how sure that is. */
@NullMarked
package trayward.host.forecast;

import org.jspecify.annotations.NullMarked;
