package trayward.host.app.campaign;

import java.util.List;
import trayward.controller.event.TripCause;

/** The names each sort of fault may be given, with reasons. Data; stateless. */
final class Causes {

  static final List<Explains> NONE = List.of();

  static final List<Explains> AIR =
      List.of(
          Explains.always(TripCause.AIR_NOT_PROVEN, "fan, duct or proof fails before heat"),
          Explains.always(TripCause.AIR_LOST, "moving air or its signal is lost in a run"));

  static final List<Explains> STUCK_ON =
      List.of(Explains.always(TripCause.PROOF_STUCK, "signals air without a commanded fan"));

  static final List<Explains> TACHOMETER =
      List.of(
          Explains.always(TripCause.PROOF_STUCK, "stuck while turning: a signal without the fan"),
          Explains.always(TripCause.AIR_NOT_PROVEN, "stuck while slow: never within its limits"));

  static final List<Explains> BATH_READING =
      List.of(Explains.always(TripCause.BATH_PROBE_BAD, "the frame itself says that it is bad"));

  static final List<Explains> BATH_FROZEN =
      List.of(
          Explains.always(TripCause.BATH_PROBE_BAD, "the design lists a frozen probe as bad"),
          apart("one moves and the other does not"));

  static final List<Explains> BATH_OFFSET =
      List.of(
          apart("one reads what the other does not"),
          Explains.always(TripCause.BATH_PROBE_BAD, "the jump is an impossible rate"),
          Explains.always(
              TripCause.HEAT_NOT_ARRIVING,
              "not to be told from a probe in air: as read, the bath does not follow its plate"),
          new Explains(
              TripCause.BATH_TOO_HOT,
              When.READS_HIGH,
              "protection must believe the higher reading"));

  static final List<Explains> BATH_OUT =
      List.of(
          Explains.always(TripCause.HEAT_NOT_ARRIVING, "the design lists a probe out of liquid"),
          Explains.always(
              TripCause.BATH_PROBE_BAD,
              "at rest in still room air a quiet probe is not to be told from a frozen one"),
          apart("one hangs in air, the other in the bath"));

  static final List<Explains> PLATE_READING =
      List.of(Explains.always(TripCause.PLATE_PROBE_BAD, "the reading is bad, frozen included"));

  static final List<Explains> PLATE_OFFSET =
      List.of(
          Explains.always(TripCause.PLATE_PROBE_BAD, "a jump, or a course no plate can take"),
          new Explains(
              TripCause.PLATE_TOO_HOT, When.READS_HIGH, "protection must believe the reading"),
          new Explains(
              TripCause.TRAY_DRY, When.READS_HIGH, "as read, the plate is hot and the bath not"),
          new Explains(
              TripCause.HEAT_NOT_ARRIVING,
              When.READS_LOW,
              "as read, the plate is colder than its heat: like a detached probe"),
          new Explains(
              TripCause.HEAT_NOT_ARRIVING,
              When.READS_HIGH,
              "not to be told from a bath probe in air: as read, the bath does not follow"));

  static final List<Explains> PLATE_OFF =
      List.of(
          Explains.always(TripCause.HEAT_NOT_ARRIVING, "the design lists a detached plate probe"),
          Explains.always(
              TripCause.PLATE_PROBE_BAD,
              "at rest in still room air a quiet probe is not to be told from a frozen one"));

  static final List<Explains> WELDED =
      List.of(Explains.always(TripCause.RELAY_STUCK, "a contact is welded"));

  static final List<Explains> NO_CURRENT =
      List.of(Explains.always(TripCause.HEAT_NOT_ARRIVING, "no current flows in the heater"));

  static final List<Explains> DRY =
      List.of(
          Explains.always(TripCause.TRAY_DRY, "no liquid takes the plate's heat"),
          new Explains(
              TripCause.HEAT_NOT_ARRIVING,
              When.NO_PLATE_PROBE,
              "heat truly does not arrive in the bath, and nothing sees the plate"));

  static final List<Explains> LOW =
      List.of(Explains.always(TripCause.TRAY_DRY, "too little liquid on the plate"));

  static final List<Explains> STALL =
      List.of(Explains.always(TripCause.SCAN_LATE, "the program stalled"));

  private Causes() {}

  private static Explains apart(String reason) {
    return new Explains(TripCause.PROBES_DISAGREE, When.TWO_BATH_PROBES, reason);
  }
}
