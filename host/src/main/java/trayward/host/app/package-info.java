/** Wires host and controller, starts and stops them; the program's entry. */
@NullMarked
package trayward.host.app;

import org.jspecify.annotations.NullMarked;
