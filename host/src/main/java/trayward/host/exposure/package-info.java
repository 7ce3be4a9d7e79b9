/** Exposure in stops. */
@NullMarked
package trayward.host.exposure;

import org.jspecify.annotations.NullMarked;
