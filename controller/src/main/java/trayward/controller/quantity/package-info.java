/** Finite, ranged values with their units: the checks every number from outside passes once. */
@NullMarked
package trayward.controller.quantity;

import org.jspecify.annotations.NullMarked;
