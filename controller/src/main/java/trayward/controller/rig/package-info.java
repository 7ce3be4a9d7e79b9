/**
 * The bench rig: every line a small file, so that any outside program can stand in for the
 * hardware.
 */
@NullMarked
package trayward.controller.rig;

import org.jspecify.annotations.NullMarked;
