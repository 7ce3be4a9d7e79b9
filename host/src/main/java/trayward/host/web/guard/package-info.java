/**
 * Who may ask what of the page: password, sessions, allowances, and the rules for a request's
 * sender. Values and rules; it serves nothing by itself.
 */
@NullMarked
package trayward.host.web.guard;

import org.jspecify.annotations.NullMarked;
