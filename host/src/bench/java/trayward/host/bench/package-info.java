/** What the running program holds under load. No part of the program and of no test. */
@NullMarked
package trayward.host.bench;

import org.jspecify.annotations.NullMarked;
