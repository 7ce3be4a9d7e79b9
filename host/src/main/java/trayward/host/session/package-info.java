/** Sessions, prints and marks, and what a print's temperature trace amounts to. */
@NullMarked
package trayward.host.session;

import org.jspecify.annotations.NullMarked;
