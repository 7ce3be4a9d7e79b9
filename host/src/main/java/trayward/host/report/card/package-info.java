/** The notebook: a card of one print as a PDF, a sheet of one session as HTML. */
@NullMarked
package trayward.host.report.card;

import org.jspecify.annotations.NullMarked;
