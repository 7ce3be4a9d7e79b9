package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.store.BookModel;
import trayward.host.store.LogCopies;
import trayward.host.store.LogFile;
import trayward.host.store.LogReader;

/**
 * Controller and host as two processes while the host's disk fills, turns read-only or reports
 * errors: the bath is held, the page says that the log fails, a mark that is not kept is not
 * answered as kept, and the log is whole afterwards. Passed over where nobody may mount.
 */
@Tag("full")
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class FailingDiskTest {

  @TempDir private Path folder;
  private Process controller;
  private Path desk;

  @BeforeEach
  void startController() throws Exception {
    assumeTrue(SmallDisk.possible(folder.resolve("probe")), "mounting takes root");
    int port;
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    Path tray =
        Files.writeString(
            folder.resolve("tray.toml"),
            """
            [link]
            tcp_port = %d
            [log]
            folder = "%s/tray-data"
            [control]
            set_c = 30
            [fan]
            spin_up_s = 0.5
            spin_down_s = 0.5
            [limits]
            purge_s = 10
            contact_test_s = 15
            """
                .formatted(port, folder));
    desk =
        Files.writeString(
            folder.resolve("desk.toml"),
            """
            [link]
            tcp_port = %d
            [log]
            folder = "%s/disk/log"
            [server]
            port = 0
            host_at_tray = true
            """
                .formatted(port, folder));
    controller = RunningTrayward.process("controller", "--config", tray.toString());
    BufferedReader said = controller.inputReader();
    for (String line = said.readLine(); !line.startsWith("The controller answers"); ) {
      line = said.readLine();
    }
  }

  @AfterEach
  void end() throws Exception {
    if (controller != null) {
      controller.destroy();
      controller.waitFor();
    }
  }

  private static void heat(RunningTrayward host) throws Exception {
    host.await(s -> s.path("state").asText().equals("OFF"));
    assertEquals(200, host.send("POST", "/api/commands/start", "{}").statusCode());
    host.awaitState("HEATING");
    assertEquals(201, mark(host, "in"));
  }

  private static int mark(RunningTrayward host, String kind) throws Exception {
    return host.send("POST", "/api/marks", "{\"kind\":\"" + kind + "\"}").statusCode();
  }

  /** What a person sees while the log fails: heat as before, and that nothing is kept. */
  private static void assertHeldWithoutALog(RunningTrayward host) throws Exception {
    JsonNode failing = host.await(s -> !s.path("log_ok").asBoolean());
    long from = failing.path("scan").asLong();
    JsonNode later = host.await(s -> s.path("scan").asLong() > from + 50);
    assertTrue(later.path("heater_on").asBoolean(), later.toString());
    assertEquals("HEATING", later.path("state").asText());
    int refused = mark(host, "emergence");
    assertTrue(refused >= 500, "a mark that is not kept: " + refused);
  }

  private static void assertWhole(Path log, List<MarkKind> kept) throws Exception {
    assertEquals(List.of(), LogCopies.check(log, BookModel.STANDARD).findings());
    try (LogReader reader = LogFile.openToRead(log)) {
      assertEquals(kept, reader.print(1).orElseThrow().marks().stream().map(Mark::kind).toList());
    }
  }

  @Test
  void onADiskThatFillsHeatGoesOnAndTheLogIsWholeWhenThereIsRoomAgain() throws Exception {
    try (SmallDisk disk = SmallDisk.plain(folder.resolve("disk"))) {
      try (RunningTrayward host = RunningTrayward.host(desk)) {
        heat(host);
        disk.fill();
        assertHeldWithoutALog(host);
        disk.empty();
        host.await(s -> s.path("log_ok").asBoolean());
        assertEquals(201, mark(host, "pull"));
        host.endPolitely();
      }
      assertWhole(disk.folder().resolve("log"), List.of(MarkKind.IN, MarkKind.PULL));
    }
  }

  @Test
  void onADiskThatReportsErrorsHeatGoesOnAndTheLogIsWholeAfterwards() throws Exception {
    try (SmallDisk disk = SmallDisk.failing(folder.resolve("disk"))) {
      try (RunningTrayward host = RunningTrayward.host(desk)) {
        heat(host);
        disk.fill();
        host.await(
            s -> {
              wear(disk);
              return !s.path("log_ok").asBoolean();
            });
        assertHeldWithoutALog(host);
        host.endPolitely();
      }
      disk.empty();
      disk.mountAgain();
      assertWhole(disk.folder().resolve("log"), List.of(MarkKind.IN));
      LogFile.open(disk.folder().resolve("log")).close();
    }
  }

  @Test
  void onADiskThatTurnsReadOnlyHeatGoesOnAndTheLogIsWholeAfterwards() throws Exception {
    try (SmallDisk disk = SmallDisk.failing(folder.resolve("disk"))) {
      try (RunningTrayward host = RunningTrayward.host(desk)) {
        heat(host);
        disk.turnReadOnly();
        Path other = disk.folder().resolve("other");
        String refused = assertThrows(IOException.class, () -> Files.createFile(other)).toString();
        assertTrue(refused.contains("Read-only file system"), refused);
        assertHeldWithoutALog(host);
        host.endPolitely();
      }
      disk.mountAgain();
      assertWhole(disk.folder().resolve("log"), List.of(MarkKind.IN));
      try (RunningTrayward host = RunningTrayward.host(desk)) {
        host.await(s -> s.path("log_ok").asBoolean());
        assertEquals(201, mark(host, "in"));
      }
    }
  }

  /** Something else writes to the disk too, so that its own books meet the errors. */
  private static void wear(SmallDisk disk) {
    Path file = disk.folder().resolve("other-" + System.nanoTime());
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
      channel.write(ByteBuffer.allocate(65_536));
      channel.force(true);
    } catch (IOException e) {
      // The errors were asked for.
    }
  }
}
