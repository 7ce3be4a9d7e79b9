/**
 * The command line: words in, exit code out. The work is done behind {@link
 * trayward.host.cli.Work}.
 */
@NullMarked
package trayward.host.cli;

import org.jspecify.annotations.NullMarked;
