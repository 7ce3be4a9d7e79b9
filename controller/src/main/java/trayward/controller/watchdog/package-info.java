/**
 * Watchdogs beside the pulse line (SR-18): the kernel's device and systemd's notifications. They
 * are told of complete scans and keep no time of their own.
 */
@NullMarked
package trayward.controller.watchdog;

import org.jspecify.annotations.NullMarked;
