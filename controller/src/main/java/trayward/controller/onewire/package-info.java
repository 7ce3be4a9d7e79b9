/** Kernel 1-Wire probe files, read on a thread of their own. */
@NullMarked
package trayward.controller.onewire;

import org.jspecify.annotations.NullMarked;
