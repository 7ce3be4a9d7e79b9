package trayward.controller.keep;

/**
 * Where the record lives. {@link #load} is called once, before the loop; {@link #offer} and {@link
 * #writable} from the scan thread, and neither may block it.
 */
public interface KeepStore extends AutoCloseable {

  /** Reads the record once at power-up. */
  KeepLoad load();

  /** Hands over a new record to be made durable; only the newest matters. */
  void offer(KeepRecord record);

  /** False once a record could not be written, or has waited too long to be. */
  boolean writable(long nowNanos);

  /** Writes what is still waiting and lets go. */
  @Override
  void close();
}
