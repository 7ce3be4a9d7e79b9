package trayward.host.link;

/**
 * An alarm, in words.
 *
 * @param cause name of the cause
 * @param state life-cycle state
 * @param latched whether it is a trip, which stays until the reset
 * @param priority how pressing it is
 * @param priorityWords the same in words: how soon to act
 * @param requirement id of the requirement behind it
 * @param meaning what is wrong
 * @param why what follows where nobody acts
 * @param action what to do
 */
public record AlarmView(
    String cause,
    String state,
    boolean latched,
    String priority,
    String priorityWords,
    String requirement,
    String meaning,
    String why,
    String action) {}
