/** Watts, warm-up and evaporation for planning. */
@NullMarked
package trayward.host.heat;

import org.jspecify.annotations.NullMarked;
