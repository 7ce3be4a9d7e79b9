/**
 * Set temperature to demanded duty: PID, tuning, time proportioning. It asks; it never switches.
 */
@NullMarked
package trayward.controller.regulate;

import org.jspecify.annotations.NullMarked;
