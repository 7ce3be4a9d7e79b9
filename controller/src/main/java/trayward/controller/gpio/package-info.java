/** Pi4J lines behind the ports. */
@NullMarked
package trayward.controller.gpio;

import org.jspecify.annotations.NullMarked;
