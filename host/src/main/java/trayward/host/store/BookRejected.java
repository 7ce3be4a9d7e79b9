package trayward.host.store;

import java.util.function.Supplier;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;

/** Rolls a transaction back because a book would no longer balance. Caught where it began. */
final class BookRejected extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  BookRejected(Problem problem) {
    super(problem.field());
    this.problem = problem;
  }

  /** What was found in a field, and what is accepted. */
  static BookRejected of(String field, Object found, String accepted) {
    return new BookRejected(new Problem(field, found.toString(), accepted));
  }

  /** The thing, where it is in order. */
  static <T> T insist(Checked<T> checked) {
    if (checked instanceof Checked.Bad<T> bad) {
      throw new BookRejected(bad.problem());
    }
    return ((Checked.Good<T>) checked).value();
  }

  /** Does a transaction; what rolled it back is the answer. */
  static <T> Checked<T> caught(Supplier<T> transaction) {
    try {
      return new Checked.Good<>(transaction.get());
    } catch (BookRejected e) {
      return new Checked.Bad<>(e.problem);
    }
  }

  Problem problem() {
    return problem;
  }
}
