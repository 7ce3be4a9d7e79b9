/**
 * The controller's own small durable records: the latch and whether heat was in progress, due
 * dates, alarms.
 */
@NullMarked
package trayward.controller.keep;

import org.jspecify.annotations.NullMarked;
