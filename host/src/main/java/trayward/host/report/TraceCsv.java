package trayward.host.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
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

  private final Writer out;
  private final StringBuilder line = new StringBuilder(256);

  /** Begins a new file, replacing an old one. */
  public TraceCsv(Path file) throws IOException {
    this.out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
    out.write(HEADER + "\n");
  }

  /** Writes a row. */
  public void row(TraceRow r) {
    line.setLength(0);
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
    line.append(r.state()).append(',');
    line.append(r.firstOut()).append(',');
    number(r.liquidL(), 5);
    number(r.evaporatedMl(), 3);
    line.setCharAt(line.length() - 1, '\n');
    try {
      out.append(line);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void number(double value, int places) {
    Decimals.append(line, value, places);
    line.append(',');
  }

  private void flag(boolean on) {
    line.append(on ? '1' : '0').append(',');
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
