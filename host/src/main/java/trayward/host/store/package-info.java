/** The log: one SQLite file of sessions, prints, marks, additions, events and the trace. */
@NullMarked
package trayward.host.store;

import org.jspecify.annotations.NullMarked;
