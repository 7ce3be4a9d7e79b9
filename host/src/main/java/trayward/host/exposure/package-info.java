/** Exposure in stops. Empty until the planners are built. */
@NullMarked
package trayward.host.exposure;

import org.jspecify.annotations.NullMarked;
