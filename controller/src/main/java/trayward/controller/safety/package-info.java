/** The pure interlock: (state, inputs) to (state, permit, alarms). No I/O, no clock, no threads. */
@NullMarked
package trayward.controller.safety;

import org.jspecify.annotations.NullMarked;
