/**
 * Alarms and events as data: trip causes, reasons for withholding heat, and the events of a
 * session.
 */
@NullMarked
package trayward.controller.event;

import org.jspecify.annotations.NullMarked;
