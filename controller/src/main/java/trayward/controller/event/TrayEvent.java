package trayward.controller.event;

/**
 * Something that happened in one scan. Immutable.
 *
 * @param atNanos monotonic time of the scan, nanoseconds
 * @param kind what sort of thing
 * @param subject the state, cause, request or probe concerned
 * @param detail the rest in words; may be empty
 */
public record TrayEvent(long atNanos, EventKind kind, String subject, String detail) {}
