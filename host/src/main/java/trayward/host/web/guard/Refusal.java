package trayward.host.web.guard;

/**
 * Why a request goes no further.
 *
 * @param status of HTTP
 * @param title of the problem
 * @param detail in words
 */
public record Refusal(int status, String title, String detail) {}
