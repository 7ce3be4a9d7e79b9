/** When to start watching a print. Empty until the forecast is built. */
@NullMarked
package trayward.host.forecast;

import org.jspecify.annotations.NullMarked;
