package trayward.host.link;

/**
 * A latched alarm, in words.
 *
 * @param cause name of the cause
 * @param state life-cycle state
 * @param requirement id of the requirement behind it
 * @param meaning what is wrong
 * @param action what to do
 */
public record AlarmView(
    String cause, String state, String requirement, String meaning, String action) {}
