package trayward.controller.keep;

/** A record held in memory, for rehearsals: it outlives the controller's simulated power loss. */
public final class MemoryKeepStore implements KeepStore {

  private KeepRecord record = KeepRecord.CLEAN;

  @Override
  public KeepLoad load() {
    return new KeepLoad.Loaded(record);
  }

  @Override
  public void offer(KeepRecord next) {
    record = next;
  }

  @Override
  public boolean writable(long nowNanos) {
    return true;
  }

  @Override
  public void close() {}
}
