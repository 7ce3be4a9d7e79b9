package trayward.host.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.locks.LockSupport;

/**
 * A tray, fan and probes as an outside program for the bench rig, written from the contract of the
 * files alone: it uses nothing of Trayward. A small tray that heats fast, in real time. Run as a
 * process of its own; arguments are the folder of lines and the folder of probes, and so on in
 * pairs: each pair is a tray with a thread of its own. It models the safety relay whose contact
 * drops a second after the last edge of the watchdog line. What the file {@code rig_leaves} names,
 * in words, it writes no longer, so that a test may spoil it. A file {@code rig_is_given} says what
 * is put into the bath, J/K and °C; it mixes at once, as much is carried out, and the file goes.
 */
public final class OutsideRig {

  private static final double STEP_S = 0.02;
  private static final double AIR_C = 20;
  private static final double HEATER_W = 200;
  private static final double PLATE_J_PER_K = 120;
  private static final double BATH_J_PER_K = 0.12 * 4180;
  private static final double COUPLING_W_PER_K = 20;
  private static final double BATH_LOSS_W_PER_K = 1.5;
  private static final double RATED_RPM = 1500;

  private final Path lines;
  private final Path probes;
  private double plateC = AIR_C;
  private double bathC = AIR_C;
  private double sensedBathC = AIR_C;
  private double sensedPlateC = AIR_C;
  private double rpm;
  private int pulse;
  private double pulseAgeS = 10;
  private Set<String> left = Set.of();

  private OutsideRig(Path lines, Path probes) {
    this.lines = lines;
    this.probes = probes;
  }

  /** Runs until killed. */
  public static void main(String[] args) {
    for (int i = 0; i + 1 < args.length; i += 2) {
      OutsideRig rig = new OutsideRig(Path.of(args[i]), Path.of(args[i + 1]));
      new Thread(rig::run, "tray " + i / 2).start();
    }
  }

  private void run() {
    try {
      live();
    } catch (IOException e) {
      throw new UncheckedIOException("a tray of the rig ends, its tick stands still", e);
    }
  }

  private void live() throws IOException {
    long began = System.nanoTime();
    for (long step = 0; ; step++) {
      if (step % 5 == 0) {
        int level = number("watchdog_line");
        pulseAgeS = level == pulse ? pulseAgeS + 5 * STEP_S : 0;
        pulse = level;
      }
      boolean heats = number("heater_relay") == 1 && number("safety_relay") == 1 && pulseAgeS < 1.0;
      advance(heats ? HEATER_W : 0, number("fan") == 1);
      if (step % 5 == 0) {
        left = names("rig_leaves");
        takeWhatIsGiven();
        line("fan_rpm", String.format(Locale.ROOT, "%.0f", rpm));
        line("airflow", rpm > RATED_RPM / 2 ? "1" : "0");
        line("stop_button", "1");
        line("heat_w_seen_by_the_rig", heats ? "200" : "0");
        line("tick", Long.toString(step));
      }
      if (step % 25 == 0) {
        probe("28-0000000000b1", sensedBathC);
        probe("28-0000000000c2", sensedPlateC);
      }
      long due = began + (long) ((step + 1) * STEP_S * 1e9);
      for (long now = System.nanoTime(); now < due; now = System.nanoTime()) {
        LockSupport.parkNanos(due - now);
      }
    }
  }

  private void advance(double heatW, boolean fan) {
    double toBath = COUPLING_W_PER_K * (plateC - bathC);
    plateC += STEP_S * (heatW - toBath - 0.2 * (plateC - AIR_C)) / PLATE_J_PER_K;
    bathC += STEP_S * (toBath - BATH_LOSS_W_PER_K * (bathC - AIR_C)) / BATH_J_PER_K;
    sensedBathC += STEP_S * (bathC - sensedBathC) / 2.0;
    sensedPlateC += STEP_S * (plateC - sensedPlateC) / 2.0;
    rpm += STEP_S * ((fan ? RATED_RPM : 0) - rpm) / 0.5;
  }

  private void takeWhatIsGiven() throws IOException {
    Path given = lines.resolve("rig_is_given");
    if (Files.exists(given)) {
      String[] words = Files.readString(given).trim().split(" ", -1);
      double jPerK = Double.parseDouble(words[0]);
      bathC += (Double.parseDouble(words[1]) - bathC) * jPerK / (BATH_J_PER_K + jPerK);
      Files.delete(given);
    }
  }

  private int number(String line) {
    try {
      return Integer.parseInt(Files.readString(lines.resolve(line)).trim());
    } catch (IOException | NumberFormatException e) {
      return 0;
    }
  }

  private Set<String> names(String line) {
    try {
      return Set.of(Files.readString(lines.resolve(line)).trim().split(" ", -1));
    } catch (IOException e) {
      return Set.of();
    }
  }

  private void line(String name, String value) throws IOException {
    if (left.contains(name)) {
      return;
    }
    replace(lines.resolve(name), value + "\n");
  }

  private void probe(String rom, double celsius) throws IOException {
    if (left.contains(rom)) {
      return;
    }
    int raw = (int) Math.rint(celsius * 16);
    int[] frame = {raw & 0xff, raw >> 8 & 0xff, 0x4b, 0x46, 0x7f, 0xff, 0x0c, 0x10, 0};
    frame[8] = crc8(frame);
    StringBuilder bytes = new StringBuilder();
    for (int b : frame) {
      bytes.append(String.format(Locale.ROOT, "%02x ", b));
    }
    Files.createDirectories(probes.resolve(rom));
    replace(
        probes.resolve(rom).resolve("w1_slave"),
        String.format(
            Locale.ROOT,
            "%s: crc=%02x YES%n%st=%d%n",
            bytes,
            frame[8],
            bytes,
            Math.round(raw * 62.5)));
  }

  /** CRC-8 of the 1-Wire bus (x^8 + x^5 + x^4 + 1, reflected), over the first eight bytes. */
  private static int crc8(int[] frame) {
    int crc = 0;
    for (int i = 0; i < 8; i++) {
      crc ^= frame[i];
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) != 0 ? crc >> 1 ^ 0x8c : crc >> 1;
      }
    }
    return crc;
  }

  private static void replace(Path file, String text) throws IOException {
    Path beside = file.resolveSibling(file.getFileName() + ".rig");
    Files.writeString(beside, text);
    Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
  }
}
