package trayward.host.bath;

/**
 * Something entered, after it was checked: the thing itself, or what was wrong with it.
 *
 * @param <T> the thing
 */
public sealed interface Checked<T> {

  /**
   * It is in order.
   *
   * @param <T> the thing
   * @param value the thing
   */
  record Good<T>(T value) implements Checked<T> {}

  /**
   * It is not.
   *
   * @param <T> the thing there is none of
   * @param problem the first thing wrong
   */
  record Bad<T>(Problem problem) implements Checked<T> {}
}
