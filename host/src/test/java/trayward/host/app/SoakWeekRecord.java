package trayward.host.app;

import java.nio.file.Path;
import trayward.controller.keep.FileKeepStore;
import trayward.controller.keep.KeepLoad;
import trayward.controller.keep.KeepRecord;
import trayward.controller.keep.KeepStore;

/**
 * The controller's record in its file, for simulated time: each power-up lets the last writer end
 * and reads the file anew. Whether it is overdue is not asked, as that is real time. One thread.
 */
final class SoakWeekRecord implements KeepStore {

  private final Path file;
  private FileKeepStore store;

  SoakWeekRecord(Path file) {
    this.file = file;
    this.store = new FileKeepStore(file);
  }

  @Override
  public KeepLoad load() {
    store.close();
    store = new FileKeepStore(file);
    return store.load();
  }

  @Override
  public void offer(KeepRecord record) {
    store.offer(record);
  }

  @Override
  public boolean writable(long nowNanos) {
    return store.writable(0);
  }

  @Override
  public void close() {
    store.close();
  }
}
