package trayward.host.app;

import trayward.host.store.TrayLog;

/** Has the summaries of finished prints kept, a few at a time. Owned by the recorder's thread. */
final class SummaryKeeper {

  /** Summaries worked out in one go: some 20 ms, while a mark may wait for the log. */
  private static final int AT_ONCE = 20;

  /** Ticks between two looks, ten a second: a print is complete 10 s after its pull. */
  private static final int TICKS = 100;

  /** Ticks between two looks while an older log is being caught up with. */
  private static final int TICKS_BEHIND = 10;

  private int ticks;

  /** Ten times a second. */
  void tick(TrayLog log) {
    ticks--;
    if (ticks <= 0) {
      ticks = log.record().keepSummaries(AT_ONCE) == AT_ONCE ? TICKS_BEHIND : TICKS;
    }
  }
}
