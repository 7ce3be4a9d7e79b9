package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What an export holds is said in the README, file by file and column by column. */
class ColumnsInReadmeTest {

  private static void saysAllOf(String readme, String file, LogTable table) {
    int at = readme.indexOf("| `" + file + "` |");
    assertTrue(at >= 0, file + " is not in the README");
    String row = readme.substring(at, readme.indexOf('\n', at));
    for (LogColumn column : table.columns()) {
      assertTrue(row.contains("`" + column.name() + "`"), file + " " + column.name() + ": " + row);
    }
  }

  @Test
  void eachFileOfAnExportHasARowWithAllItsColumns() throws Exception {
    String readme = Files.readString(Path.of("..", "README.md"));
    WholeLog.tables().forEach(t -> saysAllOf(readme, "log/" + t.name() + ".csv", t));
    saysAllOf(readme, "traces/session-N.csv", WholeLog.trace());
  }
}
