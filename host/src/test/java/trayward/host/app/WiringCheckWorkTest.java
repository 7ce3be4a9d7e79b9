package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.store.LogFile;
import trayward.host.store.TrayLog;

/** Commissioning at a terminal, with and without somebody at it. */
@Timeout(120)
class WiringCheckWorkTest {

  private static final String BATH = "28-0000000000b1";
  private static final String OTHER = "28-0000000000d3";

  @TempDir private Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  /** Time that passes only where it is waited for. */
  private static final class Leap implements Pace {
    long now = 1_000_000_000L;

    @Override
    public long nanos() {
      return now;
    }

    @Override
    public void rest(long nanos) {
      now += nanos;
    }
  }

  /** A person who types these lines and then leaves. */
  private static Terminal typing(String... lines) {
    Queue<String> left = new ArrayDeque<>(List.of(lines));
    return new Terminal() {
      @Override
      public boolean attended() {
        return true;
      }

      @Override
      public Optional<String> line() {
        return Optional.ofNullable(left.poll());
      }
    };
  }

  private static final Terminal NOBODY =
      new Terminal() {
        @Override
        public boolean attended() {
          return false;
        }

        @Override
        public Optional<String> line() {
          throw new AssertionError("nobody is asked where nobody sits");
        }
      };

  private int check(Terminal terminal, Pace pace, Path config, int seconds, boolean warm) {
    return new WiringCheckWork(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            terminal,
            pace)
        .check(config, seconds, warm);
  }

  private String said() {
    return out.toString(StandardCharsets.UTF_8);
  }

  private List<String> lines(String start) {
    return said().lines().filter(line -> line.startsWith(start)).toList();
  }

  private Path simulated() throws Exception {
    return Files.writeString(
        folder.resolve("sim.toml"), "[log]\nfolder = \"" + folder + "/data\"\n");
  }

  private Path rig() throws Exception {
    return Files.writeString(
        folder.resolve("rig.toml"),
        """
        [io]
        kind = "files"
        folder = "%1$s/lines"
        onewire_root = "%1$s/w1"
        [probes]
        bath = "%2$s"
        [log]
        folder = "%1$s/data"
        """
            .formatted(folder, BATH));
  }

  private void probe(String name, int steps) throws Exception {
    Path at = Files.createDirectories(folder.resolve("w1").resolve(name));
    Path beside = Files.writeString(at.resolve("new"), ProbeFiles.text(steps));
    Files.move(beside, at.resolve("w1_slave"), StandardCopyOption.ATOMIC_MOVE);
  }

  @BeforeEach
  void twoProbesAndAnInput() throws Exception {
    probe(BATH, 320);
    probe(OTHER, 336);
    Path lines = Files.createDirectories(folder.resolve("lines"));
    Files.writeString(lines.resolve("tick"), "1\n");
    Files.writeString(lines.resolve("stop_button"), "1\n");
  }

  @Test
  void aWholeWalkTriesEachOutputAloneAndShowsWhatFollows() throws Exception {
    assertEquals(0, check(typing("", "", "", "", "", ""), new Leap(), simulated(), 0, false));
    List<String> outputs = lines("output");
    assertTrue(outputs.get(0).startsWith("output  fan on"), outputs.toString());
    for (String name :
        List.of("fan", "buzzer", "lamp", "watchdog_line", "safety_relay", "heater_relay")) {
      assertEquals(
          List.of(true, true),
          List.of(
              outputs.stream().anyMatch(line -> line.startsWith("output  " + name + " on")),
              outputs.contains("output  " + name + " off")),
          name);
    }
    assertTrue(outputs.stream().anyMatch(l -> l.startsWith("output  heater_relay waits")), said());
    assertTrue(
        said().lines().anyMatch(l -> l.endsWith("input   airflow          present")), said());
    assertTrue(said().endsWith("All outputs are off.\n"), said());
  }

  @Test
  void anOutputCanBeSkippedAndTheWalkLeftAtAnyStep() throws Exception {
    assertEquals(0, check(typing("s", "what?", "s", "q"), new Leap(), simulated(), 0, false));
    assertEquals(List.of(), lines("output"));
    assertEquals(4, lines("ask").size());
    out.reset();
    assertEquals(0, check(typing(), new Leap(), simulated(), 0, false));
    assertEquals(1, lines("ask").size(), "the end of input is no yes");
    assertEquals(List.of(), lines("output"));
  }

  @Test
  void withNobodyAtTheTerminalInputsAreListedOnceAndNoOutputIsDriven() throws Exception {
    assertEquals(0, check(NOBODY, new Leap(), simulated(), 0, false));
    assertEquals(List.of(), lines("output"));
    assertEquals(List.of(), lines("ask"));
    assertEquals(9, lines("input").size(), said());
    assertTrue(lines("input").contains("input   start_button     up"), said());
    assertEquals(2, lines("probe").size(), said());
  }

  @Test
  void aPressedStopIsSaidAndNoRelayIsClosed() throws Exception {
    Files.writeString(folder.resolve("lines").resolve("stop_button"), "0\n");
    Pace ticking = ticking();
    assertEquals(0, check(typing("s", "s", "s", "s", "", ""), ticking, rig(), 0, false));
    assertTrue(lines("input").contains("input   stop_circuit     open (stop is pressed)"), said());
    assertTrue(said().contains("output  safety_relay refused: the stop circuit"), said());
    assertTrue(said().contains("output  heater_relay refused: the stop circuit"), said());
    assertEquals("0", Files.readString(folder.resolve("lines").resolve("heater_relay")).trim());
  }

  /** The computer's time, with a rig whose tick grows. */
  private Pace ticking() {
    return new Pace() {
      private long tick;

      @Override
      public long nanos() {
        return System.nanoTime();
      }

      @Override
      public void rest(long nanos) {
        try {
          Path beside = folder.resolve("lines").resolve("tick.new");
          Files.writeString(beside, ++tick + "\n");
          Files.move(
              beside, folder.resolve("lines").resolve("tick"), StandardCopyOption.ATOMIC_MOVE);
          during(tick);
        } catch (Exception e) {
          throw new AssertionError(e);
        }
        Pace.REAL.rest(nanos);
      }
    };
  }

  private int warmFromTick = Integer.MAX_VALUE;

  private void during(long tick) throws Exception {
    if (tick > warmFromTick) {
      probe(OTHER, 336 + (int) Math.min(60, tick - warmFromTick));
    }
  }

  @Test
  void everyProbeOfTheBusIsListedWithRomAndCheckSum() throws Exception {
    assertEquals(0, check(NOBODY, ticking(), rig(), 0, false));
    List<String> found = lines("found");
    assertEquals(2, found.size(), said());
    // CRC-8 of 28 b1 00 00 00 00 00, by a program of its own.
    assertTrue(
        found.get(0).startsWith("found   " + BATH + "  rom 28b100000000002e crc 2e is bath"),
        said());
    assertTrue(found.get(0).endsWith("VALID 20.00 °C"), said());
    assertTrue(found.get(1).contains("not configured"), said());
    assertTrue(found.get(1).endsWith("VALID 21.00 °C"), said());
  }

  @Test
  void theProbeInTheHandIsNamedAndItsLineIsReadyToCopy() throws Exception {
    warmFromTick = 40;
    assertEquals(0, check(typing("", "n", "n", "y", "q"), ticking(), rig(), 0, true));
    String it = "warm    it is " + OTHER + ", rom 28d3000000000083, not configured: it rose by ";
    assertTrue(said().contains(it), said());
    assertTrue(said().contains("\nplate = \"" + OTHER + "\"\n"), said());
    assertEquals(List.of(), lines("output"));
  }

  @Test
  void whereNothingIsWarmedNothingIsNamed() throws Exception {
    assertEquals(0, check(NOBODY, ticking(), rig(), 3, true));
    assertTrue(said().contains("no probe has risen by 1.0 K"), said());
    assertTrue(said().contains("warm    " + BATH + " rose by 0.00 K"), said());
  }

  @Test
  void aChangeWhileItWatchesIsOneLine() throws Exception {
    warmFromTick = 30;
    assertEquals(0, check(NOBODY, ticking(), rig(), 4, false));
    List<String> changes = said().lines().filter(l -> l.matches(" +[0-9.]+ s  found .*")).toList();
    assertFalse(changes.isEmpty(), said());
    assertTrue(changes.stream().allMatch(l -> l.contains(OTHER)), said());
  }

  @Test
  void besideARunningProgramNothingIsDriven() throws Exception {
    try (TrayLog log = LogFile.open(folder.resolve("data"))) {
      assertEquals(1, check(typing("", "", ""), new Leap(), simulated(), 0, false));
      assertTrue(err.toString(StandardCharsets.UTF_8).contains(log.file().toString()));
    }
    assertEquals("", said());
    assertEquals(1, err.toString(StandardCharsets.UTF_8).lines().count());
    assertEquals(0, check(NOBODY, new Leap(), simulated(), 0, false));
  }

  @Test
  void aWrongFileIsOneLineAndExitTwo() throws Exception {
    Path bad = Files.writeString(folder.resolve("bad.toml"), "[probes]\nbath = \"28-1\"\n");
    assertEquals(2, check(NOBODY, new Leap(), bad, 0, false));
    assertEquals(1, err.toString(StandardCharsets.UTF_8).lines().count());
    assertEquals(
        2,
        Main.run(
            new String[] {"wiring-check", "--config", bad.toString(), "--seconds", "-1"},
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8)));
  }

  /** An input that stays open but is no terminal: a script, a service. */
  @Test
  void asAProcessWithoutATerminalItListsAndEnds() throws Exception {
    Process process = RunningTrayward.process("wiring-check", "--config", simulated().toString());
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(30, TimeUnit.SECONDS));
    assertEquals(0, process.exitValue(), text);
    assertTrue(text.contains("simulated tray"), text);
    assertTrue(text.contains("input   stop_circuit     whole"), text);
    assertTrue(text.lines().noneMatch(l -> l.startsWith("output") || l.startsWith("ask")), text);
  }
}
