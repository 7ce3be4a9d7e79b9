/** What leaves as files: traces, events, results, exports. */
@NullMarked
package trayward.host.report;

import org.jspecify.annotations.NullMarked;
