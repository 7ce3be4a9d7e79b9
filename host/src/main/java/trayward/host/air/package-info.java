/** Air changes, purge and after-run. */
@NullMarked
package trayward.host.air;

import org.jspecify.annotations.NullMarked;
