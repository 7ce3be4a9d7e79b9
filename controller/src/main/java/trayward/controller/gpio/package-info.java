/** Lines of a Pi behind the ports, through Pi4J and the kernel's character device. */
@NullMarked
package trayward.controller.gpio;

import org.jspecify.annotations.NullMarked;
