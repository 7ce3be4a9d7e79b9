package trayward.host.report;

import java.util.List;
import trayward.host.session.TraceSample;

/** A print's trace as CSV: time from {@code in}, then what was. Stateless. */
public final class PrintTraceCsv {

  /** The header row. */
  public static final String HEADER = "t_s,bath_c,plate_c,set_c,duty,state,fan_proven";

  private PrintTraceCsv() {}

  /**
   * The whole text.
   *
   * @param inS session time of the print's {@code in}, s
   * @param samples samples on the session's time line
   */
  public static String text(double inS, List<TraceSample> samples) {
    StringBuilder out = new StringBuilder(HEADER.length() + 1 + samples.size() * 48);
    out.append(HEADER).append('\n');
    for (TraceSample s : samples) {
      Decimals.append(out, s.sessionS() - inS, 3);
      out.append(',');
      Decimals.append(out, s.bathC(), 2);
      out.append(',');
      Decimals.append(out, s.plateC(), 2);
      out.append(',');
      Decimals.append(out, s.setC(), 2);
      out.append(',');
      Decimals.append(out, s.duty(), 3);
      out.append(',').append(s.state()).append(',').append(s.fanProven() ? '1' : '0').append('\n');
    }
    return out.toString();
  }
}
