/** What a known temperature says of a probe: its correction, and how far to trust the result. */
@NullMarked
package trayward.controller.calibrate;

import org.jspecify.annotations.NullMarked;
