package trayward.host.store;

import trayward.host.bath.Problem;

/** Rolls a transaction back because a book would no longer balance. Caught where it began. */
final class BookRejected extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  BookRejected(Problem problem) {
    super(problem.field());
    this.problem = problem;
  }

  Problem problem() {
    return problem;
  }
}
