package trayward.host.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes {@code trace.csv} of a rehearsal. One thread. */
public final class TraceCsv implements AutoCloseable {

  /** The header row. */
  public static final String HEADER =
      "t_s,bath_true_c,plate_true_c,bath_c,second_bath_c,plate_c,set_c,duty,heater_command,"
          + "heater_relay,safety_relay,watchdog_line,heat_w,fan_command,fan_rpm,"
          + "flow_true_m3_per_h,airflow,fan_proven,state,first_out,liquid_l,evaporated_ml";

  /** Longest row: 13 numbers, seven flags, two names of a state and a cause, and room. */
  private static final int LONGEST = 13 * (Decimals.MOST + 1) + 7 * 2 + 2 * 40;

  /** Rows gathered for one write to the file: some hundreds. */
  private static final int BLOCK = 1 << 16;

  private final OutputStream out;
  private final byte[] block = new byte[BLOCK];
  private int at;

  /** Begins a new file, replacing an old one. */
  public TraceCsv(Path file) throws IOException {
    this.out = Files.newOutputStream(file);
    out.write((HEADER + "\n").getBytes(StandardCharsets.US_ASCII));
  }

  /** Writes a row. */
  public void row(TraceRow r) {
    if (at + LONGEST > BLOCK) {
      flush();
    }
    number(r.tS(), 1);
    number(r.bathTrueC(), 4);
    number(r.plateTrueC(), 4);
    number(r.bathC(), 4);
    number(r.secondBathC(), 4);
    number(r.plateC(), 4);
    number(r.setC(), 2);
    number(r.duty(), 4);
    flag(r.heaterCommand());
    flag(r.heaterRelay());
    flag(r.safetyRelay());
    flag(r.watchdogLine());
    number(r.heatW(), 1);
    flag(r.fanCommand());
    number(r.fanRpm(), 1);
    number(r.flowTrueM3PerH(), 2);
    flag(r.airflow());
    flag(r.fanProven());
    word(r.state());
    word(r.firstOut());
    number(r.liquidL(), 5);
    number(r.evaporatedMl(), 3);
    block[at - 1] = '\n';
  }

  private void number(double value, int places) {
    at = Decimals.put(block, at, value, places);
    block[at++] = ',';
  }

  private void flag(boolean on) {
    block[at++] = (byte) (on ? '1' : '0');
    block[at++] = ',';
  }

  /** The name of a state or of a cause: plain letters. */
  private void word(String name) {
    for (int i = 0; i < name.length(); i++) {
      block[at++] = (byte) name.charAt(i);
    }
    block[at++] = ',';
  }

  private void flush() {
    try {
      out.write(block, 0, at);
      at = 0;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    try (out) {
      out.write(block, 0, at);
      at = 0;
    }
  }
}
