/** An invented season of prints, to try the program with; nothing of it ever happened. */
@NullMarked
package trayward.host.app.demo;

import org.jspecify.annotations.NullMarked;
