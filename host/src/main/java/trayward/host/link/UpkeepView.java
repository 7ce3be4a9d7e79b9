package trayward.host.link;

import java.util.List;

/**
 * The due dates of maintenance as the controller keeps them.
 *
 * @param today date the controller's clock shows, such as {@code 2026-11-25}
 * @param clockSet whether that can be
 * @param startUnconfirmed why a start must be confirmed now, in words; empty where it need not be
 * @param items each part that is looked after
 */
public record UpkeepView(
    String today, boolean clockSet, String startUnconfirmed, List<Item> items) {

  /**
   * One part.
   *
   * @param item its name in the interface's addresses
   * @param words the same, as a person says it
   * @param lastDone date it was last done; empty where that is not known
   * @param due date it is due
   * @param daysLeft days until then; negative once it is overdue
   * @param hours hours of use since; NaN where none are counted
   * @param hoursDue hours of use at which it is due; NaN where dates alone count
   * @param overdue whether it is overdue
   * @param reason why the interval is what it is
   */
  public record Item(
      String item,
      String words,
      String lastDone,
      String due,
      long daysLeft,
      double hours,
      double hoursDue,
      boolean overdue,
      String reason) {}

  /** What the page names: each part that is overdue, and a clock that is not set. */
  public List<String> overdueWords() {
    List<String> words = new java.util.ArrayList<>();
    if (!clockSet) {
      words.add("clock not set");
    }
    items.stream().filter(Item::overdue).forEach(i -> words.add(i.words()));
    return List.copyOf(words);
  }
}
