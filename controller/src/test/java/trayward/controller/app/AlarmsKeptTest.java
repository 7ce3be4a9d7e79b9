package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.keep.AlarmEntry;
import trayward.controller.keep.AlarmRecord;
import trayward.controller.safety.Request;
import trayward.controller.scan.Answer;
import trayward.controller.scan.Snapshot;

/** A controller in real time, with no host and nobody reading its events, keeps its alarms. */
@Timeout(60)
class AlarmsKeptTest {

  /** 2026-11-25T12:00:00Z. */
  private static final long NOON_S = (20_782L * 24 + 12) * 3600;

  @TempDir private Path folder;

  private ControllerRuntime controller() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("tray.toml"), "[log]\nfolder = \"%s/data\"\n".formatted(folder));
    return new ControllerRuntime(Settings.read(file), System::nanoTime, () -> NOON_S, e -> {});
  }

  private Path data(String name) throws Exception {
    return Files.createDirectories(folder.resolve("data")).resolve(name);
  }

  private List<String> onDisk() throws Exception {
    AlarmRecord record =
        new AlarmRecord(data("controller-alarms.txt"), data("controller-alarms.old.txt"));
    return record.newest(100).stream().map(e -> e.alarm() + " " + e.state()).toList();
  }

  private static Answer ask(ControllerRuntime controller, Request request) throws Exception {
    return controller.mailbox().ask(request, true).get(10, TimeUnit.SECONDS);
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void anUnreadableRecordLocksOutAndTheAlarmsWholeLifeIsOnTheDiskAfterwards() throws Exception {
    Files.writeString(data("controller-keep.txt"), "torn");
    try (ControllerRuntime controller = controller()) {
      controller.start();
      assertTrue(ask(controller, Request.ACKNOWLEDGE).accepted());
      assertTrue(ask(controller, Request.RESET).accepted());
    }
    List<String> steps = onDisk();
    assertEquals("STORE_FAILED NORMAL", steps.get(0));
    assertEquals("STORE_FAILED ", steps.get(steps.size() - 1).substring(0, 13));
    assertTrue(steps.stream().anyMatch(s -> s.matches("STORE_FAILED (LATCHED_)?ACKNOWLEDGED")));
    AlarmEntry newest =
        new AlarmRecord(data("controller-alarms.txt"), data("controller-alarms.old.txt"))
            .newest(1)
            .get(0);
    long earlyS = NOON_S - newest.epochSeconds(); // by as much as the step had waited
    assertTrue(earlyS >= 0 && earlyS <= 10, newest.toString());
    assertTrue(newest.uptimeS() >= 0 && newest.uptimeS() < 60, newest.toString());
  }

  @Test
  @Verifies(value = "SR-22", side = Side.ALLOWS)
  void aHealthyStartWritesNoAlarmAndTheRecordIsWell() throws Exception {
    try (ControllerRuntime controller = controller()) {
      controller.start();
      assertTrue(controller.alarms().ok());
      assertEquals(0, controller.alarms().lost());
    }
    assertEquals(List.of(), onDisk());
  }

  @Test
  @Verifies(value = "SR-01", side = Side.ALLOWS)
  void anAlarmRecordThatCannotBeWrittenIsToldAndAStartIsTakenAllTheSame() throws Exception {
    Files.createDirectory(data("controller-alarms.txt"));
    try (ControllerRuntime controller = controller()) {
      controller.start();
      assertFalse(controller.alarms().ok());
      assertEquals(Answer.DONE, ask(controller, Request.START));
      Snapshot latest = controller.latest();
      assertTrue(latest != null && latest.storeWritable());
    }
  }
}
