package trayward.host.link;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import trayward.controller.calibrate.Calibration;
import trayward.controller.calibrate.Correction;
import trayward.controller.calibrate.Point;
import trayward.controller.calibrate.Uncertainty;
import trayward.controller.keep.CalibrationDesk;
import trayward.controller.port.ProbeRole;
import trayward.controller.scan.ProbeView;
import trayward.controller.scan.Snapshot;
import trayward.controller.station.ProbeRegisters;

/** Turns the controller's probes and calibrations into what the host shows. Stateless. */
final class ProbeViews {

  private ProbeViews() {}

  static ProbesView of(Snapshot now, CalibrationDesk desk) {
    List<ProbesView.Probe> probes = new ArrayList<>();
    for (ProbeRole role : ProbeRole.values()) {
      ProbeView view = now.probes().of(role);
      if (view.fitted()) {
        probes.add(probe(role, view, desk, now.setC()));
      }
    }
    return new ProbesView(
        desk.readable(),
        Calibration.REFERENCE_C.min(),
        Calibration.REFERENCE_C.max(),
        Calibration.STATED_K.min(),
        Calibration.STATED_K.max(),
        now.rests(),
        probes);
  }

  private static ProbesView.Probe probe(
      ProbeRole role, ProbeView view, CalibrationDesk desk, double setC) {
    Calibration known = desk.of(role);
    boolean valid = view.reading().valid();
    double celsius = valid ? view.reading().celsius() : Double.NaN;
    Correction correction = view.correction();
    return new ProbesView.Probe(
        role.word(),
        desk.probe(role),
        view.reading().kind().name(),
        view.raw().celsius(),
        celsius,
        known.known(),
        correction.slope(),
        correction.offsetK(),
        known.uncertaintyK(valid ? celsius : setC),
        known.known() ? Uncertainty.COVERAGE : Double.NaN,
        desk.ofAnother(role),
        view.stand().spanS(),
        view.stand().scatterK(),
        valid ? view.stand().notStill() : "the reading is not valid",
        points(known));
  }

  private static List<ProbesView.ComparedAt> points(Calibration known) {
    List<ProbesView.ComparedAt> points = new ArrayList<>();
    known.ice().ifPresent(point -> points.add(point("ice", point)));
    known.reference().ifPresent(point -> points.add(point("reference", point)));
    return points;
  }

  private static ProbesView.ComparedAt point(String kind, Point point) {
    String date = point.dated() ? LocalDate.ofEpochDay(point.epochDay()).toString() : "";
    return new ProbesView.ComparedAt(
        kind, point.celsius(), point.statedK(), point.rawC(), point.scatterK(), date);
  }

  static UncertaintyView uncertainty(Snapshot now, CalibrationDesk desk) {
    return new UncertaintyView(
        ProbeRegisters.uncertaintyK(now.probes().of(ProbeRole.BATH), desk.of(ProbeRole.BATH)),
        ProbeRegisters.uncertaintyK(
            now.probes().of(ProbeRole.SECOND_BATH), desk.of(ProbeRole.SECOND_BATH)),
        ProbeRegisters.uncertaintyK(now.probes().of(ProbeRole.PLATE), desk.of(ProbeRole.PLATE)),
        desk.readable());
  }
}
