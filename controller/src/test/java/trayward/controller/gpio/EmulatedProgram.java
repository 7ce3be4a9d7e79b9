package trayward.controller.gpio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The finished program over the emulated chip, where it has been built; twice. Facts only. */
final class EmulatedProgram {

  private static final Path JAR = Path.of("/share/trayward.jar");

  private EmulatedProgram() {}

  private static Told program(String name) throws IOException {
    Path config = EmulatedHeat.config(name, Path.of("/tmp/w1-" + name));
    return Told.java(
        Path.of("/out", name + ".err"),
        "-jar",
        JAR.toString(),
        "run",
        "--config",
        config.toString());
  }

  static void run(SimChip chip) throws IOException, InterruptedException {
    if (!Files.exists(JAR)) {
      return;
    }
    chip.contact(PiLine.STOP_BUTTON, true);
    long from = System.nanoTime();
    Told first = program("program");
    EmulatedGuest.fact("program.says", first.hear("Trayward is at"));
    EmulatedGuest.fact("program.start_ms", (System.nanoTime() - from) / 1_000_000);
    Told second = program("program_second");
    EmulatedGuest.fact("program_second.exit", second.exit());
    EmulatedGuest.fact("program.lamps", EmulatedGuest.lamps(chip));
    EmulatedGuest.fact("program.exit", first.terminate());
    EmulatedGuest.fact("program.lamps_after", EmulatedGuest.lamps(chip));
  }
}
