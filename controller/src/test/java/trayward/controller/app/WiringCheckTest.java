package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.modbus.RtuServer;
import trayward.controller.onewire.Frames;
import trayward.controller.port.ProbeRole;
import trayward.controller.scan.BarredOutputs.Doing;
import trayward.controller.scan.BarredOutputs.Output;
import trayward.controller.sense.ReadingKind;
import trayward.controller.transmitter.OneRegister;
import trayward.controller.transmitter.SerialPair;

/** What a person who commissions a tray is shown. */
@Timeout(60)
class WiringCheckTest {

  private static final long TENTH = 100_000_000L;

  @TempDir private Path folder;
  private long now = TENTH;

  private Settings simulated() throws Exception {
    return Settings.read(
        Files.writeString(
            folder.resolve("sim.toml"), "[log]\nfolder='%s/data'\n".formatted(folder)));
  }

  @Test
  void besideARunningControllerItRefusesAndTouchesNoOutput() throws Exception {
    Files.createDirectories(folder.resolve("lines"));
    Files.createDirectories(folder.resolve("w1"));
    Files.writeString(folder.resolve("lines").resolve("heater_relay"), "1\n");
    Path file =
        Files.writeString(
            folder.resolve("tray.toml"),
            "[io]\nkind='files'\nfolder='%1$s/lines'\nonewire_root='%1$s/w1'\n[log]\nfolder='%1$s/data'\n"
                .formatted(folder));
    Settings settings = Settings.readUnfinished(file);
    try (WiringCheck other = new WiringCheck(simulated(), () -> now)) {
      assertFalse(other.look(Optional.empty()).lines().airflow());
      Refused.names(
          Refused.line(() -> new WiringCheck(settings, () -> now).close()),
          "log.folder",
          "another running controller has it");
    }
    assertEquals("1", Files.readString(folder.resolve("lines").resolve("heater_relay")).trim());
    new WiringCheck(settings, () -> now).close();
    assertEquals("0", Files.readString(folder.resolve("lines").resolve("heater_relay")).trim());
  }

  @Test
  @Verifies(value = "SR-01", side = Verifies.Side.WITHHOLDS)
  void aWholeWalkOverTheSimulatedTrayGivesItNoHeat() throws Exception {
    try (WiringCheck check = new WiringCheck(simulated(), () -> now)) {
      WiringView first = check.look(Optional.empty());
      for (Output output : Output.values()) {
        boolean on = false;
        for (int i = 0; i < 80; i++, now += TENTH) {
          on |= check.look(Optional.of(output)).doing() == Doing.ON;
        }
        assertTrue(on, output.name());
      }
      WiringView last = check.look(Optional.empty());
      assertEquals(
          List.of(ProbeRole.BATH, ProbeRole.PLATE),
          last.probes().stream().map(WiringView.Probe::role).toList());
      assertEquals(List.of(), last.found());
      // 250 W for 5 s would have warmed the plate by a kelvin.
      double plateBefore = first.probes().get(1).reading().celsius();
      assertEquals(plateBefore, last.probes().get(1).reading().celsius(), 0.2);
    }
  }

  @Test
  void theFanIsProvenBySwitchAndTachometerAlone() throws Exception {
    try (WiringCheck check = new WiringCheck(simulated(), () -> now)) {
      assertFalse(check.look(Optional.empty()).lines().airflow());
      for (int i = 0; i < 200; i++, now += TENTH) {
        check.look(Optional.of(Output.FAN));
      }
      WiringView running = check.look(Optional.of(Output.FAN));
      assertTrue(running.lines().airflow());
      assertEquals(1500, running.lines().fanRpm(), 150);
    }
  }

  private WiringView until(WiringCheck check, Predicate<WiringView> wanted) {
    long until = System.nanoTime() + 300 * TENTH;
    while (true) {
      WiringView view = check.look(Optional.empty());
      if (wanted.test(view)) {
        return view;
      }
      if (System.nanoTime() > until) {
        return fail("did not come; last was " + view);
      }
      LockSupport.parkNanos(TENTH / 10);
    }
  }

  private void probe(String name, int steps) throws Exception {
    Path at = Files.createDirectories(folder.resolve("w1").resolve(name));
    Files.writeString(at.resolve("w1_slave"), Frames.steps(steps));
  }

  @Test
  void onABenchRigEveryProbeOfTheBusIsFoundAndThoseThatAreConfiguredHaveTheirPlace()
      throws Exception {
    probe("28-0000000000b1", 320);
    probe("28-0000000000d3", 400);
    Files.createDirectories(folder.resolve("lines"));
    Files.writeString(folder.resolve("lines").resolve("tick"), "1\n");
    Path file =
        Files.writeString(
            folder.resolve("tray.toml"),
            """
            [io]
            kind = "files"
            folder = "%1$s/lines"
            onewire_root = "%1$s/w1"
            [probes]
            bath = "28-0000000000b1"
            plate = "28-0000000000c2"
            [log]
            folder = "%1$s/data"
            """
                .formatted(folder));
    try (WiringCheck check = new WiringCheck(Settings.readUnfinished(file), System::nanoTime)) {
      check.start();
      WiringView view =
          until(check, v -> v.found().size() == 2 && v.probes().get(0).reading().valid());
      assertEquals(ReadingKind.VALID, view.probes().get(0).reading().kind());
      assertEquals(ReadingKind.ABSENT, view.probes().get(1).reading().kind());
      WiringView.Found bath = view.found().get(0);
      assertEquals("28-0000000000b1", bath.id().folder());
      assertEquals(Optional.of(ProbeRole.BATH), bath.role());
      assertEquals(Optional.empty(), view.found().get(1).role());
      assertEquals(25, view.found().get(1).reading().celsius());
      assertEquals(
          List.of("28-0000000000b1", "28-0000000000d3"), List.copyOf(view.temperatures().keySet()));
      assertEquals("0", Files.readString(folder.resolve("lines/heater_relay")).trim());
    }
  }

  /** Configuration, wiring, serial port and registers together. */
  @Test
  void aProbeOnATransmitterIsReadOverItsSerialPort() throws Exception {
    Files.createDirectories(folder.resolve("lines"));
    Files.createDirectories(folder.resolve("w1"));
    Files.writeString(folder.resolve("lines").resolve("tick"), "1\n");
    try (SerialPair pair = SerialPair.in(folder);
        RtuServer transmitter = OneRegister.of(7, 12, 14_055).on(pair.far())) {
      transmitter.start();
      Path file =
          Files.writeString(
              folder.resolve("tray.toml"),
              """
              [io]
              kind = "files"
              folder = "%1$s/lines"
              onewire_root = "%1$s/w1"
              [probes]
              bath = "transmitter"
              [transmitter]
              serial_port = "%2$s"
              [transmitter.bath]
              unit = 7
              register = 12
              type = "uint16"
              scale = 0.01
              offset = -25
              reports = "pt100_ohm"
              [log]
              folder = "%1$s/data"
              """
                  .formatted(folder, pair.near().path()));
      try (WiringCheck check = new WiringCheck(Settings.readUnfinished(file), System::nanoTime)) {
        check.start();
        WiringView view = until(check, v -> v.probes().get(0).reading().valid());
        assertEquals("transmitter-7-4-12", view.probes().get(0).name());
        // 115.55 Ω: IEC 60751 has 115.54 Ω at 40 °C and some 0.38 Ω/K.
        assertEquals(40.02, view.probes().get(0).reading().celsius(), 0.01);
        assertEquals(List.of(), view.found());
      }
    }
  }

  @Test
  void aRigThatHasStoppedHasNoInputs() throws Exception {
    probe("28-0000000000b1", 320);
    Files.createDirectories(folder.resolve("lines"));
    Files.writeString(folder.resolve("lines").resolve("tick"), "1\n");
    Path file =
        Files.writeString(
            folder.resolve("tray.toml"),
            "[io]\nkind='files'\nfolder='%1$s/lines'\nonewire_root='%1$s/w1'\n[log]\nfolder='%1$s/data'\n"
                .formatted(folder));
    try (WiringCheck check = new WiringCheck(Settings.readUnfinished(file), () -> now)) {
      assertTrue(check.look(Optional.empty()).lines().present());
      now += 20 * TENTH;
      assertFalse(check.look(Optional.empty()).lines().present());
      assertEquals(Doing.STOPPED, check.look(Optional.of(Output.HEATER_RELAY)).doing());
    }
  }
}
