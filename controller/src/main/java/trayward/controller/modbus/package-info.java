/**
 * The open Modbus protocol on a serial line and on loopback TCP: framing, a server's answers, a
 * client's questions. It knows nothing of trays; {@code station} says what is served.
 */
@NullMarked
package trayward.controller.modbus;

import org.jspecify.annotations.NullMarked;
