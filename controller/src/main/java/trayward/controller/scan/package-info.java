/** The only loop, the only clock, the only writer of outputs. */
@NullMarked
package trayward.controller.scan;

import org.jspecify.annotations.NullMarked;
