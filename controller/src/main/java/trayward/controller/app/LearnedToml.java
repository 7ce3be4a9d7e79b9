package trayward.controller.app;

import java.nio.file.Path;
import java.util.Locale;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.LearnedTray.Figure;
import trayward.controller.quantity.Range;

/**
 * What a rehearsal learned of its tray, as a file a person can read and a later rehearsal begins
 * with. Each number has its doubt beside it: the standard deviation of its logarithm. Stateless.
 */
public final class LearnedToml {

  /** The file in the folder of a rehearsal. */
  public static final String FILE = "learned.toml";

  private static final String TRAY = "tray";

  /** Nothing here is negative or beyond what {@link LearnedBounds} judges more closely. */
  private static final Range NUMBER = new Range(0, 100_000, "");

  private static final Range DOUBT = new Range(0, 1, "");

  private LearnedToml() {}

  /** Its text. */
  public static String write(LearnedTray t) {
    StringBuilder out =
        new StringBuilder("# What a warm-up taught of this tray. 0.05 of doubt is about 5 %.\n")
            .append("tray = \"")
            .append(t.name())
            .append("\"\n")
            .append(String.format(Locale.ROOT, "declared_w = %.1f\n", t.declaredW()))
            .append("litre_measured = ")
            .append(t.measured())
            .append('\n');
    figure(out, "heater_w", t.heater());
    figure(out, "plate_j_per_k", t.plate());
    figure(out, "plate_to_bath_w_per_k", t.coupling());
    figure(out, "bath_loss_w_per_k", t.loss());
    figure(out, "evaporation_factor", t.evaporation());
    figure(out, "bath_lag_s", t.bathLag());
    figure(out, "plate_lag_s", t.plateLag());
    figure(out, "wall_j_per_k", t.wall());
    return out.append(String.format(Locale.ROOT, "rms_k = %.4f\n", t.rmsK())).toString();
  }

  private static void figure(StringBuilder out, String key, Figure f) {
    out.append(
        String.format(Locale.ROOT, "%s = %.6f\n%s_doubt = %.4f\n", key, f.value(), key, f.doubt()));
  }

  /**
   * Reads what a rehearsal in {@code folder} learned.
   *
   * @param name the tray that is wanted
   * @param areaM2 its surface
   */
  static LearnedTray read(Path folder, String name, double areaM2) throws ConfigRefused {
    Path file = folder.resolve(FILE);
    Section top = TomlText.read(file);
    String tray = top.text(TRAY);
    if (!tray.equals(name)) {
      throw top.refuse(TRAY, "'" + tray + "'", "'" + name + "', the name in [tray]");
    }
    LearnedTray read =
        new LearnedTray(
            name,
            0,
            top.number("declared_w", new Range(10, 2000, "W")),
            top.flag("litre_measured", false),
            figure(top, "heater_w"),
            figure(top, "plate_j_per_k"),
            figure(top, "plate_to_bath_w_per_k"),
            figure(top, "bath_loss_w_per_k"),
            figure(top, "evaporation_factor"),
            figure(top, "bath_lag_s"),
            figure(top, "plate_lag_s"),
            figure(top, "wall_j_per_k"),
            top.number("rms_k", new Range(0, LearnedBounds.RMS_K, "K")));
    top.done();
    String wrong = LearnedBounds.wrong(read, areaM2);
    if (!wrong.isEmpty()) {
      throw new ConfigRefused(file + ": " + wrong);
    }
    return read;
  }

  private static Figure figure(Section top, String key) throws ConfigRefused {
    return new Figure(top.number(key, NUMBER), top.number(key + "_doubt", DOUBT));
  }
}
