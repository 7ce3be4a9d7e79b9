package trayward.controller.gpio;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Set;
import java.util.TreeSet;
import trayward.controller.app.EmulatedController;

/**
 * The whole controller over the emulated chip, from power-up to heat and to air that is lost, with
 * a fan and a cold bath outside of it. Facts only.
 */
final class EmulatedHeat {

  private static final long MS = 1_000_000L;

  /** A computer so busy that a scan or the fan comes late must begin again. */
  private static final int ATTEMPTS = 3;

  /** Proving, purge and contact test take some 100 s; a busy computer takes longer. */
  private static final long LONGEST_MS = 300_000;

  /**
   * Frames as the kernel writes them: 20 °C and a step more, check sums by the data sheet's CRC.
   */
  private static final String[] FRAMES = {
    "40 01 4b 46 7f ff 10 10 1d : crc=1d YES\n40 01 4b 46 7f ff 10 10 1d t=20000\n",
    "41 01 4b 46 7f ff 0f 10 aa : crc=aa YES\n41 01 4b 46 7f ff 0f 10 aa t=20062\n"
  };

  private final SimChip chip;
  private final Path probe;
  private volatile boolean airCut;
  private volatile boolean over;

  private EmulatedHeat(SimChip chip, Path probe) {
    this.chip = chip;
    this.probe = probe;
  }

  /** A configuration with short times, within their limits. */
  static Path config(String name, Path bus) throws IOException {
    Path probe = Files.createDirectories(bus.resolve("28-0123456789ab"));
    put(probe, FRAMES[0]);
    String toml =
        """
        [io]
        kind = "pi"
        onewire_root = "%s"
        [probes]
        bath = "28-0123456789ab"
        [fan]
        spin_up_s = 0.5
        spin_down_s = 0.5
        # A busy computer makes a poor tachometer; its line has tests of its own.
        tachometer = false
        [limits]
        proving_s = 2
        look_extra_s = 1
        purge_s = 10
        contact_test_s = 15
        [server]
        port = 0
        [log]
        folder = "/tmp/%s"
        """
            .formatted(bus, name);
    return Files.writeString(Path.of("/tmp", name + ".toml"), toml);
  }

  private static void put(Path probe, String frame) throws IOException {
    Path beside = Files.writeString(probe.resolve("new"), frame);
    Files.move(beside, probe.resolve("w1_slave"), StandardCopyOption.ATOMIC_MOVE);
  }

  static void run(SimChip chip) throws IOException, InterruptedException {
    Path bus = Path.of("/tmp/w1");
    Path config = config("heat", bus);
    EmulatedHeat heat = new EmulatedHeat(chip, bus.resolve("28-0123456789ab"));
    Thread world = new Thread(heat::world, "world");
    world.start();
    Told controller =
        Told.main(Path.of("/out/heat.err"), EmulatedController.class.getName(), config.toString());
    String running = controller.hear();
    EmulatedGuest.fact("heat.running", running);
    if (running.equals("running")) {
      // Only now: taking a line sets its pull, which in this chip opens the contact again.
      chip.contact(PiLine.STOP_BUTTON, true);
      heat.course(controller);
    }
    controller.close();
    EmulatedGuest.fact("heat.exit", controller.exit());
    EmulatedGuest.fact("heat.lamps_closed", EmulatedGuest.lamps(chip));
    heat.over = true;
    world.join();
    chip.contact(PiLine.AIRFLOW, false);
  }

  private void course(Told controller) throws IOException {
    EmulatedGuest.fact("heat.ten_watchdog_edges_ms", edges(10));
    EmulatedGuest.fact("heat.state_at_first", controller.ask("state"));
    long bothMs = -1;
    for (int attempt = 1; attempt <= ATTEMPTS && bothMs < 0; attempt++) {
      EmulatedGuest.fact("heat.attempts", attempt);
      String started = controller.ask("start");
      EmulatedGuest.fact("heat.start", started);
      if (!started.equals("started")) {
        EmulatedGuest.pause(5000 * MS);
        continue;
      }
      EmulatedGuest.fact("heat.fan_on_ms", await(() -> chip.high(PiLine.FAN)));
      Set<String> alone = new TreeSet<>();
      bothMs = await(() -> bothClosed(alone));
      EmulatedGuest.fact("heat.both_closed_ms", bothMs);
      EmulatedGuest.fact("heat.closed_alone_before", String.join(" ", alone));
      EmulatedGuest.fact("heat.state", controller.ask("state"));
    }
    if (bothMs < 0) {
      return;
    }
    airCut = true;
    EmulatedGuest.fact("heat.off_after_air_ms", await(() -> !chip.high(PiLine.HEATER_RELAY)));
    EmulatedGuest.pause(3000 * MS);
    EmulatedGuest.fact("heat.state_after", controller.ask("state"));
    EmulatedGuest.fact("heat.fan_after", chip.high(PiLine.FAN));
    EmulatedGuest.fact("heat.safety_after", chip.high(PiLine.SAFETY_RELAY));
  }

  private boolean bothClosed(Set<String> alone) throws IOException {
    boolean heater = chip.high(PiLine.HEATER_RELAY);
    boolean safety = chip.high(PiLine.SAFETY_RELAY);
    if (heater != safety) {
      alone.add(heater ? "heater_relay" : "safety_relay");
    }
    return heater && safety;
  }

  /** How long so many edges of the watchdog line take, ms; -1 where they do not come. */
  private long edges(int wanted) throws IOException {
    long from = System.nanoTime();
    for (int edges = 0; edges < wanted; edges++) {
      String level = chip.value(PiLine.WATCHDOG_LINE);
      if (await(() -> !chip.value(PiLine.WATCHDOG_LINE).equals(level)) < 0) {
        return -1;
      }
    }
    return (System.nanoTime() - from) / MS;
  }

  @FunctionalInterface
  private interface Look {
    boolean yes() throws IOException;
  }

  /** How long until it is so, ms; -1 where it does not come. */
  private static long await(Look look) throws IOException {
    long from = System.nanoTime();
    while (!look.yes()) {
      if (System.nanoTime() - from > LONGEST_MS * MS) {
        return -1;
      }
      EmulatedGuest.pause(5 * MS);
    }
    return (System.nanoTime() - from) / MS;
  }

  /** A fan that moves air while its relay is closed, and a cold bath. */
  private void world() {
    long due = System.nanoTime();
    try {
      for (int step = 0; !over; step++) {
        chip.contact(PiLine.AIRFLOW, chip.high(PiLine.FAN) && !airCut);
        if (step % 100 == 0) {
          put(probe, FRAMES[step / 100 % 2]);
        }
        due += 10 * MS;
        EmulatedGuest.pause(Math.max(0, due - System.nanoTime()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e); // the world stands still, and the facts will show it
    }
  }
}
