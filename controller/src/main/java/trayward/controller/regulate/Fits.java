package trayward.controller.regulate;

import org.jspecify.annotations.Nullable;

/**
 * Where fits are done: at once in a rehearsal, so that a trace stays reproducible; on a thread of
 * its own beside a real scan, which must not wait.
 */
public interface Fits {

  /** Asks for a fit; false, and forgotten, where one is still under way. Scan thread. */
  boolean ask(FitJob job);

  /** The result of the last fit asked for, once; null where there is none. Scan thread. */
  @Nullable FitResult take();

  /** Does each fit when it is asked for. */
  static Fits inline() {
    return new Fits() {
      private @Nullable FitResult done;

      @Override
      public boolean ask(FitJob job) {
        done = job.run();
        return true;
      }

      @Override
      public @Nullable FitResult take() {
        FitResult result = done;
        done = null;
        return result;
      }
    };
  }
}
