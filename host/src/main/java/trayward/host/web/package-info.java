/** The page and the JSON interface on loopback. */
@NullMarked
package trayward.host.web;

import org.jspecify.annotations.NullMarked;
