/** Watts, warm-up and evaporation for planning. Empty until the planners are built. */
@NullMarked
package trayward.host.heat;

import org.jspecify.annotations.NullMarked;
