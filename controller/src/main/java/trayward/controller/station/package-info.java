/**
 * The open-standard Modbus server and its register dictionary. Empty until the link between two
 * processes is built.
 */
@NullMarked
package trayward.controller.station;

import org.jspecify.annotations.NullMarked;
