package trayward.host.bath;

import java.util.function.Function;

/**
 * Something entered, after it was checked: the thing itself, or what was wrong with it.
 *
 * @param <T> the thing
 */
public sealed interface Checked<T> {

  /** Goes on with the thing where it is in order; what was wrong stays. */
  default <R> Checked<R> then(Function<T, Checked<R>> next) {
    return this instanceof Good<T> good
        ? next.apply(good.value())
        : new Bad<>(((Bad<T>) this).problem());
  }

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
