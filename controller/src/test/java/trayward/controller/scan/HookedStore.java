package trayward.controller.scan;

import trayward.controller.keep.KeepLoad;
import trayward.controller.keep.KeepRecord;
import trayward.controller.keep.KeepStore;
import trayward.controller.keep.MemoryKeepStore;

/** A record in memory that outlives the scan; something runs each time a scan asks for it. */
final class HookedStore implements KeepStore {

  private final MemoryKeepStore store = new MemoryKeepStore();
  private final Runnable whenAsked;

  HookedStore(Runnable whenAsked) {
    this.whenAsked = whenAsked;
  }

  @Override
  public KeepLoad load() {
    return store.load();
  }

  @Override
  public void offer(KeepRecord record) {
    store.offer(record);
  }

  @Override
  public boolean writable(long nowNanos) {
    whenAsked.run();
    return store.writable(nowNanos);
  }

  @Override
  public void close() {
    store.close();
  }
}
