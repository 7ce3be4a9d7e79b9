package trayward.host.app;

import java.util.concurrent.locks.LockSupport;
import trayward.controller.port.MonotonicClock;

/** Time that goes on and can be waited for; a seam for tests. */
interface Pace extends MonotonicClock {

  /** The computer's. */
  Pace REAL =
      new Pace() {
        @Override
        public long nanos() {
          return System.nanoTime();
        }

        @Override
        public void rest(long nanos) {
          LockSupport.parkNanos(nanos);
        }
      };

  /** Returns after so long, or a little before. */
  void rest(long nanos);
}
