/**
 * The controller as a server of the open Modbus protocol: what every register means, and what a
 * host may ask. The framing below it is {@code modbus}.
 */
@NullMarked
package trayward.controller.station;

import org.jspecify.annotations.NullMarked;
