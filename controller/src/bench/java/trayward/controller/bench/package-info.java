/** What a scan costs. No part of the program and of no test. */
@NullMarked
package trayward.controller.bench;

import org.jspecify.annotations.NullMarked;
