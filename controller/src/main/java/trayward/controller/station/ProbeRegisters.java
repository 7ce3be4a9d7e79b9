package trayward.controller.station;

import static trayward.controller.station.Entry.number;
import static trayward.controller.station.Entry.text;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import trayward.controller.calibrate.Calibration;
import trayward.controller.calibrate.Point;
import trayward.controller.calibrate.Uncertainty;
import trayward.controller.port.ProbeRole;
import trayward.controller.scan.ProbeView;

/** Input registers of each probe and of what is known of it, a block for each place. */
public final class ProbeRegisters {

  /** Address of the first block. */
  public static final int BASE = 300;

  /** From one block to the next. */
  private static final int EACH = 100;

  /** How many of them are there. */
  public static final int WORDS = 92;

  private static final int ROM_WORDS = 16;
  private static final int STILL_WORDS = 48;

  private static final Map<ProbeRole, Place> PLACES = places();

  private ProbeRegisters() {}

  /**
   * The registers of one comparison.
   *
   * @param celsius the known temperature; not valid where there was no comparison
   * @param statedK its uncertainty
   * @param rawC what the probe read
   * @param scatterK scatter of that
   * @param day when, from 1970-01-01; not valid where the clock cannot have been right
   */
  public record Compared(Entry celsius, Entry statedK, Entry rawC, Entry scatterK, Entry day) {
    private List<Entry> all() {
      return List.of(celsius, statedK, rawC, scatterK, day);
    }
  }

  /**
   * The registers of one place.
   *
   * @param fitted whether a probe is configured there
   * @param known whether it was compared
   * @param ofAnother whether what is on record belongs to another probe
   * @param rawC what it says
   * @param slope corrected kelvin for each kelvin read
   * @param offsetK what is added at 0 °C
   * @param uncertaintyK how far the corrected reading may be from the truth
   * @param coverage coverage factor of that
   * @param stoodS time it has been watched
   * @param scatterK scatter of its readings in that time
   * @param ice comparison in melting ice
   * @param reference comparison with a thermometer
   * @param probe which probe it is
   * @param notStill why nothing can be taken from it now
   */
  public record Place(
      Entry fitted,
      Entry known,
      Entry ofAnother,
      Entry rawC,
      Entry slope,
      Entry offsetK,
      Entry uncertaintyK,
      Entry coverage,
      Entry stoodS,
      Entry scatterK,
      Compared ice,
      Compared reference,
      Entry probe,
      Entry notStill) {

    private List<Entry> all() {
      List<Entry> all =
          new ArrayList<>(
              List.of(
                  fitted,
                  known,
                  ofAnother,
                  rawC,
                  slope,
                  offsetK,
                  uncertaintyK,
                  coverage,
                  stoodS,
                  scatterK));
      all.addAll(ice.all());
      all.addAll(reference.all());
      all.add(probe);
      all.add(notStill);
      return all;
    }
  }

  /** The registers of a place. */
  public static Place of(ProbeRole role) {
    Place place = PLACES.get(role);
    if (place == null) {
      throw new IllegalArgumentException(role.name());
    }
    return place;
  }

  /** Address of a place's first register. */
  public static int base(ProbeRole role) {
    return BASE + EACH * Codes.PROBE.code(role);
  }

  private static Map<ProbeRole, Place> places() {
    Map<ProbeRole, Place> places = new EnumMap<>(ProbeRole.class);
    for (ProbeRole role : ProbeRole.values()) {
      places.put(role, place(role));
    }
    return places;
  }

  private static Place place(ProbeRole role) {
    int at = base(role);
    String p = role.word() + "_probe_";
    Function<Moment, ProbeView> view = m -> m.now().probes().of(role);
    Function<Moment, Calibration> known = m -> m.calibrations().of(role);
    return new Place(
        number(
            at,
            Form.COUNT,
            p + "fitted",
            "",
            "1 where a probe is configured here",
            m -> view.apply(m).fitted() ? 1 : 0),
        number(
            at + 1,
            Form.COUNT,
            p + "calibrated",
            "",
            "1 where it was compared",
            m -> known.apply(m).known() ? 1 : 0),
        number(
            at + 2,
            Form.COUNT,
            p + "of_another",
            "",
            "1 where what is on record belongs to another probe",
            m -> m.calibrations().ofAnother(role) ? 1 : 0),
        number(
            at + 3,
            Form.LONG_THOUSANDTHS,
            p + "raw",
            "°C",
            "what it says",
            m -> view.apply(m).raw().celsius()),
        number(
            at + 5,
            Form.LONG_MILLIONTHS,
            p + "slope",
            "K/K",
            "corrected kelvin for each kelvin read",
            m -> view.apply(m).correction().slope()),
        number(
            at + 7,
            Form.LONG_THOUSANDTHS,
            p + "offset",
            "K",
            "what is added at 0 °C",
            m -> view.apply(m).correction().offsetK()),
        number(
            at + 9,
            Form.THOUSANDTHS,
            p + "uncertainty",
            "K",
            "how far the corrected reading may be from the truth",
            m -> known.apply(m).uncertaintyK(celsius(m, role))),
        number(
            at + 10,
            Form.THOUSANDTHS,
            p + "coverage",
            "",
            "coverage factor of that; not valid for the limits of the data sheet",
            m -> known.apply(m).known() ? Uncertainty.COVERAGE : Double.NaN),
        number(
            at + 11,
            Form.THOUSANDTHS,
            p + "stood",
            "s",
            "time it has been watched, at most the half minute that is taken",
            m -> Math.min(32, view.apply(m).stand().spanS())),
        number(
            at + 12,
            Form.LONG_THOUSANDTHS,
            p + "scatter",
            "K",
            "scatter of its readings in that time",
            m -> view.apply(m).stand().scatterK()),
        compared(at + 14, p + "ice_", known.andThen(Calibration::ice)),
        compared(at + 21, p + "reference_", known.andThen(Calibration::reference)),
        text(at + 28, ROM_WORDS, p + "id", "which probe it is", m -> m.calibrations().probe(role)),
        text(
            at + 28 + ROM_WORDS,
            STILL_WORDS,
            p + "not_still",
            "why nothing can be taken from it now, in words; empty where it can",
            m ->
                view.apply(m).reading().valid()
                    ? view.apply(m).stand().notStill()
                    : "the reading is not valid"));
  }

  private static Compared compared(int at, String p, Function<Moment, Optional<Point>> point) {
    return new Compared(
        of(at, Form.HUNDREDTHS, p + "known", "°C", "the known temperature", point, Point::celsius),
        of(
            at + 1,
            Form.THOUSANDTHS,
            p + "stated",
            "K",
            "its uncertainty, k = 2",
            point,
            Point::statedK),
        of(
            at + 2,
            Form.LONG_THOUSANDTHS,
            p + "read",
            "°C",
            "what the probe read",
            point,
            Point::rawC),
        of(
            at + 4,
            Form.LONG_THOUSANDTHS,
            p + "read_scatter",
            "K",
            "scatter of that",
            point,
            Point::scatterK),
        of(
            at + 6,
            Form.COUNT,
            p + "day",
            "d",
            "when, from 1970-01-01",
            point,
            x -> x.dated() ? x.epochDay() : Double.NaN));
  }

  private static Entry of(
      int at,
      Form form,
      String name,
      String unit,
      String meaning,
      Function<Moment, Optional<Point>> point,
      ToDoubleFunction<Point> what) {
    return number(
        at,
        form,
        name,
        unit,
        meaning,
        m -> point.apply(m).map(x -> what.applyAsDouble(x)).orElse(Double.NaN));
  }

  /** The reading where it is valid, else the set temperature: where it would matter. */
  private static double celsius(Moment m, ProbeRole role) {
    ProbeView view = m.now().probes().of(role);
    return view.reading().valid() ? view.reading().celsius() : m.now().setC();
  }

  /** How far a corrected reading may be from the truth, K; NaN where no valid one stands. */
  public static double uncertaintyK(ProbeView view, Calibration known) {
    return view.fitted() && view.reading().valid()
        ? known.uncertaintyK(view.reading().celsius())
        : Double.NaN;
  }

  static List<Entry> all() {
    List<Entry> all = new ArrayList<>();
    PLACES.values().forEach(place -> all.addAll(place.all()));
    return all;
  }
}
