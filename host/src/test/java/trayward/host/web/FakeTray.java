package trayward.host.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import trayward.host.link.AlarmHistory;
import trayward.host.link.AlarmView;
import trayward.host.link.Command;
import trayward.host.link.LevelView;
import trayward.host.link.LinkAnswer;
import trayward.host.link.LinkEvent;
import trayward.host.link.ProbesView;
import trayward.host.link.TrayKnownView;
import trayward.host.link.TrayLink;
import trayward.host.link.TrayStatus;
import trayward.host.link.UncertaintyView;
import trayward.host.link.UpkeepView;

/** A controller that says what a test wants it to, and remembers what it was asked. */
final class FakeTray implements TrayLink {

  final List<Command> asked = new ArrayList<>();
  volatile boolean silent;
  volatile LinkAnswer answer = new LinkAnswer.Done();
  volatile double uptimeS = 100;
  volatile double bathC = 39.5;
  volatile List<AlarmView> alarms = List.of();
  volatile Optional<AlarmHistory> history = Optional.of(new AlarmHistory(true, 0, 0, List.of()));
  volatile int historyAsked = -1;
  volatile String state = "HOLDING";
  volatile LevelView level = new LevelView("WELL", 0.95, 0.8, 1.05, 0.05);
  volatile TrayKnownView tray = new TrayKnownView("", Double.NaN, Double.NaN, null, 46.2, "");
  volatile TrayCalibrated calibratedTray = new TrayCalibrated(true, "the next warm-up counts");
  final List<Double> measuredLitres = new ArrayList<>();
  volatile String unconfirmed = "";
  volatile boolean recordReadable = true;
  volatile boolean fanProven = true;
  final List<String> calibrated = new ArrayList<>();
  final List<Double> poured = new ArrayList<>();
  final List<OptionalDouble> confirmed = new ArrayList<>();

  @Override
  public Optional<TrayStatus> latest() {
    return silent ? Optional.empty() : Optional.of(status());
  }

  private TrayStatus status() {
    return new TrayStatus(
        1234,
        uptimeS,
        state,
        12.5,
        -1,
        bathC,
        Double.NaN,
        45.25,
        "VALID",
        40,
        0.43,
        true,
        true,
        true,
        fanProven,
        1500,
        true,
        alarms.isEmpty() ? "" : alarms.get(0).cause(),
        alarms,
        List.of("PRESENCE_DUE"),
        List.of("presence due"),
        1800,
        true,
        1200,
        7,
        level,
        new UncertaintyView(0.13, Double.NaN, 0.5, recordReadable),
        tray);
  }

  @Override
  public TrayCalibrated calibrateTray(double litres) {
    measuredLitres.add(litres);
    return calibratedTray;
  }

  @Override
  public LinkAnswer send(Command command) {
    asked.add(command);
    return answer;
  }

  @Override
  public LinkAnswer silence(String cause) {
    return alarms.stream().anyMatch(a -> a.cause().equals(cause))
        ? answer
        : new LinkAnswer.Refused("it does not sound");
  }

  @Override
  public LinkAnswer setTemperature(double celsius) {
    return celsius > 50 ? new LinkAnswer.Refused("15 to 50 °C") : answer;
  }

  @Override
  public LinkAnswer start(boolean confirmed) {
    asked.add(Command.START);
    boolean needs = !unconfirmed.isEmpty() && !confirmed;
    return needs ? new LinkAnswer.ConfirmFirst(unconfirmed) : answer;
  }

  @Override
  public UpkeepView upkeep() {
    boolean overdue = !unconfirmed.isEmpty();
    UpkeepView.Item breaker =
        new UpkeepView.Item(
            "breaker-test",
            "ground-fault breaker test",
            "2026-10-01",
            "2026-10-31",
            overdue ? -25 : 5,
            Double.NaN,
            Double.NaN,
            overdue,
            "monthly");
    return new UpkeepView("2026-11-25", true, unconfirmed, List.of(breaker));
  }

  @Override
  public Optional<AlarmHistory> alarmHistory(int most) {
    historyAsked = most;
    return history;
  }

  @Override
  public LinkAnswer upkeepDone(String item) {
    unconfirmed = "";
    return answer;
  }

  @Override
  public ProbesView probes() {
    ProbesView.ComparedAt at =
        new ProbesView.ComparedAt("reference", 40, 0.1, 40.3125, 0.031, "2026-11-20");
    ProbesView.Probe bath =
        new ProbesView.Probe(
            "bath",
            "28-0000000000ab",
            "VALID",
            39.8125,
            39.5,
            true,
            1,
            -0.3125,
            0.13,
            2,
            false,
            30,
            0.031,
            "",
            List.of(at));
    ProbesView.Probe plate =
        new ProbesView.Probe(
            "plate",
            "28-0000000000cd",
            "STALE",
            45.25,
            Double.NaN,
            false,
            1,
            0,
            0.5,
            Double.NaN,
            true,
            0,
            Double.NaN,
            "the reading is not valid",
            List.of());
    return new ProbesView(recordReadable, 15, 70, 0.005, 0.5, true, List.of(bath, plate));
  }

  @Override
  public LinkAnswer calibrateIce(String role) {
    calibrated.add(role + " ice");
    return answer;
  }

  @Override
  public LinkAnswer calibrateReference(String role, double celsius, double statedK) {
    calibrated.add(role + " " + celsius + " " + statedK);
    return answer;
  }

  @Override
  public LinkAnswer forgetCalibration(String role) {
    calibrated.add(role + " forgotten");
    return answer;
  }

  @Override
  public LinkAnswer topUp(double litres) {
    poured.add(litres);
    return litres > 20 ? new LinkAnswer.Refused("0.001 to 20 L") : answer;
  }

  @Override
  public LinkAnswer confirmLevel(OptionalDouble litres) {
    confirmed.add(litres);
    return answer;
  }

  @Override
  public List<LinkEvent> takeEvents() {
    return List.of();
  }

  @Override
  public void beat() {}

  @Override
  public boolean simulated() {
    return true;
  }

  @Override
  public Optional<ScanLateness> lateness() {
    return Optional.of(new ScanLateness(10, 0.1, 1.5, 2.0));
  }
}
