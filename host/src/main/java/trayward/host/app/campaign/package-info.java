/**
 * Random faults in random sessions against the simulated tray, judged by an oracle with code and
 * constants of its own: it knows the design's words and numbers and nothing of the interlock's
 * code.
 */
@NullMarked
package trayward.host.app.campaign;

import org.jspecify.annotations.NullMarked;
