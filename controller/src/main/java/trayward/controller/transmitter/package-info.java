/** Temperature transmitters on a Modbus RTU line, read on a thread of their own. */
@NullMarked
package trayward.controller.transmitter;

import org.jspecify.annotations.NullMarked;
