package trayward.host.link;

import java.util.List;

/**
 * The controller's durable record of alarms, as the host shows it. Immutable.
 *
 * @param ok whether it can be written
 * @param skipped lines on the disk that could not be believed at power-up
 * @param lost steps since power-up that will never be on the disk
 * @param steps steps of alarms, the newest first
 */
public record AlarmHistory(boolean ok, int skipped, long lost, List<Step> steps) {

  /**
   * One step of an alarm in its life cycle. Texts are empty for an alarm of another version.
   *
   * @param name the alarm
   * @param state the state it came to
   * @param at wall-clock time as the controller had it, such as {@code 2026-11-25T12:00:00Z}
   * @param uptimeS time since that controller's power-up, s
   * @param detail what was found
   * @param priority how pressing it is
   * @param priorityWords the same in words
   * @param requirement id of the requirement behind it
   * @param what what is wrong
   * @param why what follows where nobody acts
   * @param action what to do
   */
  public record Step(
      String name,
      String state,
      String at,
      double uptimeS,
      String detail,
      String priority,
      String priorityWords,
      String requirement,
      String what,
      String why,
      String action) {}
}
