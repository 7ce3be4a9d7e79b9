package trayward.host.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;

/** A folder that a log was exported to. One thread. */
public interface LogSource {

  /** What takes rows one after another. */
  interface Taker {
    /**
     * Takes a row.
     *
     * @param at its number in the file, from 1; the header is not counted
     */
    void take(LogRow row, long at);
  }

  /** Hands on each row of a table. */
  void each(LogTable table, Taker taker) throws IOException;

  /** Hands on each sample of a session. */
  void eachSample(long session, Taker taker) throws IOException;

  /** Sessions of which there is a trace. */
  List<Long> traced() throws IOException;

  /** Name of the file a table is in. */
  String file(LogTable table);

  /** Where a picture lies. */
  Path picture(String name);

  /** Pictures that were missing already when it was written. */
  Set<String> missing();
}
