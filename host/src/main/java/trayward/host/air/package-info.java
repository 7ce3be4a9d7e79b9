/** Air changes, purge and after-run. Empty until the planners are built. */
@NullMarked
package trayward.host.air;

import org.jspecify.annotations.NullMarked;
