/**
 * What hardware must do, as small interfaces. Adapters implement them; {@code scan} alone calls
 * them.
 */
@NullMarked
package trayward.controller.port;

import org.jspecify.annotations.NullMarked;
