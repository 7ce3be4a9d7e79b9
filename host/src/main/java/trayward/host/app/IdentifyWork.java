package trayward.host.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import trayward.controller.regulate.Estimate;
import trayward.controller.regulate.HoldReach;
import trayward.controller.regulate.Identified;
import trayward.controller.regulate.PidGains;
import trayward.controller.regulate.PidRegulator;
import trayward.controller.regulate.RegulatorInput;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayBelief;
import trayward.controller.regulate.TrayDoubt;
import trayward.controller.regulate.TrayLesson;
import trayward.controller.regulate.TrayModel;
import trayward.host.cli.Declared;
import trayward.host.cli.Work;
import trayward.host.report.TraceRefused;
import trayward.host.report.TraceTable;

/** Identifies a tray from a recorded warm-up, and says what regulator it asks for. One thread. */
final class IdentifyWork {

  private static final ObjectMapper JSON = new ObjectMapper();

  /** Highest plate temperature a regulator asks for by default, °C; nothing here depends on it. */
  private static final double PLATE_CEILING_C = 68;

  private final PrintStream out;
  private final PrintStream err;

  IdentifyWork(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  int identify(Path file, Declared declared, boolean json) {
    String wrong = declared.wrong();
    if (!wrong.isEmpty()) {
      err.println(wrong);
      return Work.WRONG_WORDS;
    }
    try {
      WarmUpFinder.Found warmUp =
          WarmUpFinder.find(TraceTable.read(file))
              .orElseThrow(
                  () ->
                      new TraceRefused(
                          file.toString(),
                          "rows",
                          "no warm-up",
                          "a bath that rises by 5 K or more under heat"));
      Report report = report(warmUp, declared);
      if (json) {
        out.println(JSON.writerWithDefaultPrettyPrinter().writeValueAsString(report.document()));
      } else {
        report.print(out);
      }
      return Work.DONE;
    } catch (TraceRefused e) {
      err.println(e.line());
      return Work.WRONG_WORDS;
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  static Report report(WarmUpFinder.Found warmUp, Declared declared) {
    TrayBelief prior = TrayBelief.declared(model(declared));
    Identified tray = warmUp.record().fit(prior, TrayDoubt.DECLARED, room(declared));
    return new Report(warmUp, declared, tray);
  }

  private static TrayModel model(Declared d) {
    TrayModel r = TrayModel.REFERENCE;
    return new TrayModel(
        d.litres(),
        r.areaM2(),
        r.plateJPerK(),
        r.plateToBathWPerK(),
        r.bathLossWPerK(),
        r.plateLossWPerK(),
        d.watts(),
        r.evaporationFactor());
  }

  private static RoomModel room(Declared d) {
    return new RoomModel(d.airC(), d.humidity(), d.draughtMPerS());
  }

  /**
   * What is told.
   *
   * @param warmUp the warm-up
   * @param declared what was declared of the tray
   * @param tray what was found
   */
  record Report(WarmUpFinder.Found warmUp, Declared declared, Identified tray) {

    private TrayModel model() {
      return tray.found().belief().model();
    }

    private TrayLesson lesson() {
      return new TrayLesson(declared.litres(), tray.found(), true);
    }

    private PidGains gains() {
      PidRegulator pid = new PidRegulator(model(), room(declared), PLATE_CEILING_C);
      double nan = Double.NaN;
      // Taking the set temperature, with no bath to act upon, tunes it and asks nothing.
      var unused =
          pid.duty(new RegulatorInput(0.1, warmUp.setC(), nan, 0, nan, 0, false, false, 0));
      return pid.gains();
    }

    void print(PrintStream out) {
      line(
          out,
          "warm-up from %.1f s to %.1f s: bath %.1f to %.1f °C, set %.1f °C, misfit %.3f K",
          warmUp.fromS(),
          warmUp.toS(),
          warmUp.fromC(),
          warmUp.toC(),
          warmUp.setC(),
          tray.found().rmsK());
      out.println("the tray, with its expanded uncertainty (k = 2):");
      table(out, tray.numbers());
      out.println("what temperatures show without watts and litres:");
      table(out, tray.ratios());
      line(
          out,
          "litres: %s; %.2f ± %.2f L, given %.0f W declared",
          lesson().words(),
          lesson().litres(),
          Estimate.COVERAGE * lesson().litresDoubt(),
          declared.watts());
      PidGains g = gains();
      line(
          out,
          "regulator at %.1f °C (SIMC, ISA form): gain %.4f 1/K, integral %.1f s, derivative %.1f s",
          warmUp.setC(),
          g.gain(),
          g.integralS(),
          g.derivativeS());
      line(
          out,
          "hold duty %.3f, hold plate %.1f °C; %s",
          model().holdDuty(warmUp.setC(), room(declared)),
          model().holdPlateC(warmUp.setC(), room(declared)),
          HoldReach.words(HoldReach.highestC(model(), room(declared))));
      out.println(
          "The model is a well mixed bath on a plate of constant contact: a real tray is slower.");
    }

    private static void table(PrintStream out, Map<String, Estimate> of) {
      of.forEach((name, e) -> line(out, "  %-38s %12.6g  ± %.2g", name, e.value(), e.expanded()));
    }

    private static void line(PrintStream out, String format, Object... of) {
      out.println(String.format(Locale.ROOT, format, of));
    }

    ObjectNode document() {
      ObjectNode node = JSON.createObjectNode();
      ObjectNode seen = node.putObject("warm_up");
      seen.put("from_s", warmUp.fromS());
      seen.put("to_s", warmUp.toS());
      seen.put("from_c", warmUp.fromC());
      seen.put("to_c", warmUp.toC());
      seen.put("set_c", warmUp.setC());
      node.put("rms_k", tray.found().rmsK());
      node.put("coverage_factor", Estimate.COVERAGE);
      put(node.putObject("tray"), tray.numbers());
      put(node.putObject("ratios"), tray.ratios());
      node.put("cooling_at_set_k_per_s", tray.coolingKPerS(warmUp.setC()));
      ObjectNode litres = node.putObject("litres");
      litres.put("value", lesson().litres());
      litres.put("uncertainty", Estimate.COVERAGE * lesson().litresDoubt());
      litres.put("words", lesson().words());
      PidGains g = gains();
      ObjectNode regulator = node.putObject("regulator");
      regulator.put("rule", "SIMC");
      regulator.put("form", "ISA");
      regulator.put("gain_per_k", g.gain());
      regulator.put("integral_s", g.integralS());
      regulator.put("derivative_s", g.derivativeS());
      regulator.put("derivative_filter", g.filter());
      regulator.put("hold_duty", model().holdDuty(warmUp.setC(), room(declared)));
      regulator.put("hold_plate_c", model().holdPlateC(warmUp.setC(), room(declared)));
      node.put("highest_hold_c", HoldReach.highestC(model(), room(declared)));
      return node;
    }

    private static void put(ObjectNode node, Map<String, Estimate> of) {
      of.forEach(
          (name, e) -> {
            ObjectNode one = node.putObject(name);
            one.put("value", e.value());
            one.put("uncertainty", e.expanded());
          });
    }
  }
}
