package trayward.controller.gpio;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import trayward.controller.port.LineReadings;
import trayward.controller.port.OutputLine;
import trayward.controller.port.OutputLines;

/**
 * A program in the emulated computer that takes the default lines and does what it is told on
 * standard input: {@code write heater_relay on}, {@code read}, {@code pulses}. It answers each in
 * one line, and gives the lines back when its input ends.
 */
final class EmulatedProbe {

  private EmulatedProbe() {}

  public static void main(String[] args) throws IOException {
    PiLines lines;
    try {
      lines = PiLines.open(PiWiring.standard(), System::nanoTime);
    } catch (LineUnavailable e) {
      System.err.println(e.getMessage());
      System.exit(2);
      return;
    }
    OutputLines out = lines.outputLines();
    Map<String, OutputLine> outputs =
        Map.of(
            "heater_relay", out.heaterRelay(),
            "safety_relay", out.safetyRelay(),
            "watchdog_line", out.watchdogLine(),
            "fan", out.fan(),
            "buzzer", out.buzzer());
    System.out.println("taken");
    BufferedReader in =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = in.readLine(); line != null; line = in.readLine()) {
      System.out.println(answer(lines, outputs, line.split(" ", -1)));
    }
    lines.close();
    System.exit(0);
  }

  private static String answer(PiLines lines, Map<String, OutputLine> outputs, String[] words) {
    switch (words[0]) {
      case "write" -> {
        OutputLine output = outputs.get(words[1]);
        if (output == null) {
          return "no such output";
        }
        output.write(words[2].equals("on"));
        return "written";
      }
      case "pulses" -> {
        return Long.toString(lines.tachometerPulses());
      }
      default -> {
        LineReadings r = lines.read(System.nanoTime());
        return (r.present() ? "present" : "absent")
            + (r.airflow() ? " airflow" : "")
            + (r.stopCircuitClosed() ? " stop_closed" : "")
            + (r.resetButton() ? " reset" : "")
            + (r.presenceButton() ? " presence" : "")
            + (r.pedal() ? " pedal" : "")
            + " rpm="
            + Math.round(r.fanRpm());
      }
    }
  }
}
