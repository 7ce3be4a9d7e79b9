package trayward.host.link;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import trayward.controller.app.ControllerRuntime;
import trayward.controller.app.TrayDesk;
import trayward.controller.event.AlarmCause;
import trayward.controller.event.TripCause;
import trayward.controller.event.WithheldReason;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.port.MonotonicClock;
import trayward.controller.port.ProbeRole;
import trayward.controller.safety.LevelEstimate;
import trayward.controller.safety.LevelTold;
import trayward.controller.safety.Request;
import trayward.controller.scan.Answer;
import trayward.controller.scan.ScanTiming;
import trayward.controller.scan.Snapshot;

/** The link where controller and host share a process. Safe on any thread. */
public final class InProcessLink implements TrayLink {

  /** A status older than this is not now: ten scans and a second of grace. */
  private static final long FRESH_NANOS = 2_000_000_000L;

  /** A scan answers within two periods; longer means there is none. */
  private static final long PATIENCE_MS = 2000;

  private final ControllerRuntime controller;
  private final MonotonicClock clock;
  private final boolean simulated;
  private final boolean hostAtTray;
  private final AtomicLong beats = new AtomicLong();

  /**
   * A link to a controller in this process.
   *
   * @param controller the controller
   * @param clock the clock it runs by
   * @param simulated whether its tray is simulated
   * @param hostAtTray whether who uses the host stands at the tray
   */
  public InProcessLink(
      ControllerRuntime controller, MonotonicClock clock, boolean simulated, boolean hostAtTray) {
    this.controller = controller;
    this.clock = clock;
    this.simulated = simulated;
    this.hostAtTray = hostAtTray;
  }

  @Override
  public Optional<TrayStatus> latest() {
    Snapshot snapshot = controller.latest();
    if (snapshot == null || clock.nanos() - snapshot.nowNanos() > FRESH_NANOS) {
      return Optional.empty();
    }
    return Optional.of(status(snapshot));
  }

  private TrayStatus status(Snapshot s) {
    return new TrayStatus(
        s.scan(),
        s.uptimeMs() / 1000.0,
        s.state().name(),
        s.stateMs() / 1000.0,
        s.remainingMs() < 0 ? -1 : s.remainingMs() / 1000.0,
        s.bath().validC(),
        s.secondBath().validC(),
        s.plate().validC(),
        s.bath().kind().name(),
        s.setC(),
        s.duty(),
        s.heaterOn() && s.safetyRelay(), // the contact test closes each alone
        s.safetyRelay(),
        s.fanCommanded(),
        s.fanProven(),
        s.fanRpm(),
        s.airflow(),
        s.firstOut().map(TripCause::name).orElse(""),
        s.alarms().stream().map(AlarmViews::of).toList(),
        s.withheld().stream().map(WithheldReason::name).toList(),
        s.withheld().stream().map(WithheldReason::words).toList(),
        s.presenceDueMs() / 1000.0,
        s.storeWritable(),
        s.wear().heaterClosings(),
        s.wear().safetyClosings(),
        level(s.level()),
        ProbeViews.uncertainty(s, controller.calibrator().desk()),
        TrayViews.of(s.tray(), controller.tray()));
  }

  private static LevelView level(LevelEstimate e) {
    return new LevelView(e.level().name(), e.litres(), e.lowL(), e.highL(), e.addL());
  }

  @Override
  public LinkAnswer send(Command command) {
    Request request =
        switch (command) {
          case STOP -> Request.STOP;
          case START -> Request.START;
          case ACKNOWLEDGE -> Request.ACKNOWLEDGE;
          case RESET -> Request.RESET;
          case PRESENCE -> Request.PRESENCE;
        };
    return await(controller.mailbox().ask(request, hostAtTray));
  }

  @Override
  public LinkAnswer setTemperature(double celsius) {
    return await(controller.mailbox().setTemperature(celsius, hostAtTray));
  }

  @Override
  public LinkAnswer topUp(double litres) {
    return await(controller.mailbox().level(new LevelTold.Poured(litres), hostAtTray));
  }

  @Override
  public LinkAnswer confirmLevel(OptionalDouble litres) {
    LevelTold told =
        litres.isPresent() ? new LevelTold.Holds(litres.getAsDouble()) : new LevelTold.AsSaid();
    return await(controller.mailbox().level(told, hostAtTray));
  }

  @Override
  public LinkAnswer start(boolean confirmed) {
    return await(controller.mailbox().start(confirmed, hostAtTray));
  }

  @Override
  public void call(Call call) {
    var unused = controller.mailbox().call(Calls.of(call));
  }

  @Override
  public LinkAnswer silence(String cause) {
    return AlarmCause.of(cause)
        .map(known -> await(controller.mailbox().silence(known)))
        .orElseGet(() -> Calls.noAlarm(cause));
  }

  @Override
  public UpkeepView upkeep() {
    return UpkeepViews.of(controller.upkeep());
  }

  @Override
  public Optional<AlarmHistory> alarmHistory(int most) {
    return Optional.of(AlarmViews.history(controller.alarms(), most));
  }

  @Override
  public LinkAnswer upkeepDone(String item) {
    String wrong =
        UpkeepItem.of(item)
            .map(controller.upkeep()::done)
            .orElse("there is no " + item + " to look after");
    return wrong.isEmpty() ? new LinkAnswer.Done() : new LinkAnswer.Refused(wrong);
  }

  @Override
  public ProbesView probes() {
    Snapshot now = controller.latest();
    return now == null ? ProbesView.NONE : ProbeViews.of(now, controller.calibrator().desk());
  }

  @Override
  public LinkAnswer calibrateIce(String role) {
    return calibrated(role, controller.calibrator()::ice);
  }

  @Override
  public LinkAnswer calibrateReference(String role, double celsius, double statedK) {
    return calibrated(role, r -> controller.calibrator().reference(r, celsius, statedK));
  }

  @Override
  public LinkAnswer forgetCalibration(String role) {
    return calibrated(role, controller.calibrator()::forget);
  }

  @Override
  public TrayCalibrated calibrateTray(double litres) {
    TrayDesk.Calibrated answer = controller.tray().calibrate(litres);
    return new TrayCalibrated(answer.taken(), answer.words());
  }

  private static LinkAnswer calibrated(String word, Function<ProbeRole, Answer> asked) {
    return ProbeRole.of(word)
        .map(asked)
        .map(a -> a.accepted() ? new LinkAnswer.Done() : new LinkAnswer.Refused(a.reason()))
        .orElse(new LinkAnswer.Refused("there is no probe " + word));
  }

  private static LinkAnswer await(CompletableFuture<Answer> promise) {
    try {
      Answer answer = promise.get(PATIENCE_MS, TimeUnit.MILLISECONDS);
      if (answer.confirmable()) {
        return new LinkAnswer.ConfirmFirst(answer.reason());
      }
      return answer.accepted() ? new LinkAnswer.Done() : new LinkAnswer.Refused(answer.reason());
    } catch (TimeoutException | ExecutionException e) {
      return new LinkAnswer.NotDelivered("the controller did not answer");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new LinkAnswer.NotDelivered("the program is being stopped");
    }
  }

  @Override
  public List<LinkEvent> takeEvents() {
    Snapshot snapshot = controller.latest();
    if (snapshot == null) {
      return List.of();
    }
    return controller.events().take().stream()
        .map(
            e ->
                new LinkEvent(
                    snapshot.uptimeS(e.atNanos()), e.kind().name(), e.subject(), e.detail()))
        .toList();
  }

  @Override
  public void beat() {
    controller.host().beat(beats.incrementAndGet());
  }

  @Override
  public boolean simulated() {
    return simulated;
  }

  @Override
  public Optional<ScanLateness> lateness() {
    ScanTiming.Lateness l = controller.timing().lateness();
    return Optional.of(new ScanLateness(l.scans(), l.p50Ms(), l.p999Ms(), l.maxMs()));
  }
}
