package trayward.controller.scan;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import trayward.controller.event.TripCause;
import trayward.controller.port.LineReadings;
import trayward.controller.safety.ContactWatch;
import trayward.controller.safety.Limit;
import trayward.controller.safety.Limits;
import trayward.controller.safety.ReadBack;
import trayward.controller.safety.Relay;
import trayward.controller.safety.ThermalInput;
import trayward.controller.safety.TrayWatch;

/** The watches over where heat goes, fed once a scan before the interlock. Scan thread only. */
final class HeatWatches {

  private final Limits limits;
  private TrayWatch tray;
  private ContactWatch contacts;
  private ReadBack readBack;

  /**
   * Watches at power-up.
   *
   * @param settings the installation
   * @param heated heat was in progress when power was lost
   */
  HeatWatches(ScanSettings settings, boolean heated) {
    this.limits = settings.limits();
    this.tray = TrayWatch.start(settings.model(), settings.room());
    this.contacts = ContactWatch.start(heated);
    this.readBack = ReadBack.start(limits);
  }

  /** What this scan found, after what the scan before wrote. */
  void see(ThermalInput in, int elapsedMs, LineReadings lines, Written before) {
    tray = tray.next(in);
    contacts = contacts.next(in, limits.ms(Limit.CONTACT_TEST_S));
    readBack =
        readBack.next(
            elapsedMs,
            lines.heaterContact(),
            before.heaterOn(),
            lines.safetyContact(),
            before.safetyOn());
  }

  /** Heat is to be held off for a look. */
  boolean looking() {
    return tray.looking();
  }

  /** Which relay the contact test wants closed alone. */
  Optional<Relay> contactTest() {
    return contacts.closes();
  }

  /** Both contacts have been seen to open in this purge. */
  boolean contactsSound() {
    return contacts.sound();
  }

  /** What the interlock should know. */
  Set<TripCause> findings() {
    Set<TripCause> byHeat = tray.findings();
    Set<TripCause> byContacts = readBack.findings();
    if (byHeat.isEmpty() && byContacts.isEmpty() && contacts.welded().isEmpty()) {
      return Set.of();
    }
    EnumSet<TripCause> found = EnumSet.noneOf(TripCause.class);
    found.addAll(byHeat);
    found.addAll(byContacts);
    if (contacts.welded().isPresent()) {
      found.add(TripCause.RELAY_STUCK);
    }
    return found;
  }

  /** What is known beyond the name of a cause: which relay. */
  String detail(TripCause cause) {
    Optional<Relay> which =
        switch (cause) {
          case RELAY_STUCK -> contacts.points().or(readBack::welded);
          case HEAT_NOT_ARRIVING -> readBack.notClosing();
          case SCAN_LATE,
              STORE_FAILED,
              BATH_PROBE_BAD,
              PLATE_PROBE_BAD,
              PROBES_DISAGREE,
              TRAY_DRY,
              PLATE_TOO_HOT,
              BATH_TOO_HOT,
              PROOF_STUCK,
              AIR_NOT_PROVEN,
              AIR_LOST ->
              Optional.empty();
        };
    return which
        .map(relay -> cause.meaning() + " It is " + relay.words() + ".")
        .orElse(cause.meaning());
  }
}
