/** Raw readings to classified ones: valid, stale, absent, implausible. */
@NullMarked
package trayward.controller.sense;

import org.jspecify.annotations.NullMarked;
