/** The host's only way to the controller: its status, its events, and requests to it. */
@NullMarked
package trayward.host.link;

import org.jspecify.annotations.NullMarked;
