package trayward.host.link;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import trayward.controller.calibrate.Calibration;
import trayward.controller.port.ProbeRole;
import trayward.controller.station.Block;
import trayward.controller.station.Codes;
import trayward.controller.station.Flag;
import trayward.controller.station.ProbeRegisters;
import trayward.controller.station.StatusRegisters;

/** Turns registers into the probes and what is known of each. Pure. */
final class ProbesReader {

  private ProbesReader() {}

  static ProbesView probes(Block status, Map<ProbeRole, Block> places) {
    int flags = StatusRegisters.FLAGS.whole(status);
    List<ProbesView.Probe> probes = new ArrayList<>();
    places.forEach(
        (role, block) -> {
          if (ProbeRegisters.of(role).fitted().number(block) == 1) {
            probes.add(probe(role, block, status));
          }
        });
    return new ProbesView(
        Flag.CALIBRATIONS_READABLE.in(flags),
        Calibration.REFERENCE_C.min(),
        Calibration.REFERENCE_C.max(),
        Calibration.STATED_K.min(),
        Calibration.STATED_K.max(),
        Flag.RESTS.in(flags),
        probes);
  }

  private static ProbesView.Probe probe(ProbeRole role, Block b, Block status) {
    ProbeRegisters.Place place = ProbeRegisters.of(role);
    int reading =
        switch (role) {
          case BATH -> StatusRegisters.BATH_CLASS.whole(status);
          case SECOND_BATH -> StatusRegisters.SECOND_BATH_CLASS.whole(status);
          case PLATE -> StatusRegisters.PLATE_CLASS.whole(status);
        };
    double celsius =
        switch (role) {
          case BATH -> StatusRegisters.BATH.number(status);
          case SECOND_BATH -> StatusRegisters.SECOND_BATH.number(status);
          case PLATE -> StatusRegisters.PLATE.number(status);
        };
    return new ProbesView.Probe(
        role.word(),
        place.probe().text(b),
        Codes.READING.name(reading).map(Enum::name).orElse("UNKNOWN_" + reading),
        place.rawC().number(b),
        celsius,
        place.known().number(b) == 1,
        place.slope().number(b),
        place.offsetK().number(b),
        place.uncertaintyK().number(b),
        place.coverage().number(b),
        place.ofAnother().number(b) == 1,
        place.stoodS().number(b),
        place.scatterK().number(b),
        place.notStill().text(b),
        points(place, b));
  }

  private static List<ProbesView.ComparedAt> points(ProbeRegisters.Place place, Block b) {
    List<ProbesView.ComparedAt> points = new ArrayList<>();
    add("ice", place.ice(), b, points);
    add("reference", place.reference(), b, points);
    return List.copyOf(points);
  }

  private static void add(
      String kind, ProbeRegisters.Compared at, Block b, List<ProbesView.ComparedAt> points) {
    double celsius = at.celsius().number(b);
    if (!Double.isNaN(celsius)) {
      points.add(
          new ProbesView.ComparedAt(
              kind,
              celsius,
              at.statedK().number(b),
              at.rawC().number(b),
              at.scatterK().number(b),
              StatusReader.date(at.day().number(b))));
    }
  }
}
