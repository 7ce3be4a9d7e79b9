/** The controller's own small durable record: the latch, and whether heat was in progress. */
@NullMarked
package trayward.controller.keep;

import org.jspecify.annotations.NullMarked;
