/**
 * Reads and validates configuration, wires, starts and stops: the only place that knows every other
 * package.
 */
@NullMarked
package trayward.controller.app;

import org.jspecify.annotations.NullMarked;
