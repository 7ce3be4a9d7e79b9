package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.link.Call;
import trayward.host.link.Command;
import trayward.host.link.LevelView;
import trayward.host.link.LinkAnswer;
import trayward.host.link.LinkEvent;
import trayward.host.link.TrayKnownView;
import trayward.host.link.TrayLink;
import trayward.host.link.TrayStatus;
import trayward.host.link.UncertaintyView;
import trayward.host.link.UpkeepView;
import trayward.host.session.Mark;
import trayward.host.session.MarkKind;
import trayward.host.session.Print;
import trayward.host.store.LogFile;
import trayward.host.store.LogRefused;
import trayward.host.store.TrayLog;

/** A pedal kept down takes back the mark that its press made, and no other. */
class LongPressTest {

  /** A link over which only the pedal is heard. */
  private static final class Pedal implements TrayLink {
    private final List<LinkEvent> events = new ArrayList<>();
    private @Nullable TrayStatus status;
    private final List<Call> calls = new ArrayList<>();

    @Override
    public void call(Call call) {
      calls.add(call);
    }

    @Override
    public List<LinkEvent> takeEvents() {
      List<LinkEvent> taken = List.copyOf(events);
      events.clear();
      return taken;
    }

    @Override
    public Optional<TrayStatus> latest() {
      return Optional.ofNullable(status);
    }

    @Override
    public LinkAnswer send(Command command) {
      return new LinkAnswer.Refused("");
    }

    @Override
    public LinkAnswer start(boolean confirmed) {
      return new LinkAnswer.Refused("");
    }

    @Override
    public UpkeepView upkeep() {
      return new UpkeepView("", true, "", List.of());
    }

    @Override
    public LinkAnswer upkeepDone(String item) {
      return new LinkAnswer.Refused("");
    }

    @Override
    public LinkAnswer setTemperature(double celsius) {
      return new LinkAnswer.Refused("");
    }

    @Override
    public LinkAnswer topUp(double litres) {
      return new LinkAnswer.Refused("");
    }

    @Override
    public LinkAnswer confirmLevel(OptionalDouble litres) {
      return new LinkAnswer.Refused("");
    }

    @Override
    public void beat() {}

    @Override
    public boolean simulated() {
      return true;
    }

    @Override
    public Optional<ScanLateness> lateness() {
      return Optional.empty();
    }
  }

  @TempDir Path folder;
  private final Pedal pedal = new Pedal();
  private TrayLog log;
  private Recorder recorder;

  @BeforeEach
  void open() throws LogRefused {
    log = LogFile.open(folder);
    recorder = new Recorder(pedal, log, Clock.systemUTC(), Runnable::run);
  }

  @AfterEach
  void close() {
    log.close();
  }

  private void pedal(double uptimeS, String subject) {
    pedal.events.add(new LinkEvent(uptimeS, "PEDAL", subject, ""));
    recorder.tick();
  }

  /** All that matters is the time. */
  private static TrayStatus status(double uptimeS) {
    return new TrayStatus(
        1,
        uptimeS,
        "HOLDING",
        0,
        -1,
        40,
        Double.NaN,
        45,
        "VALID",
        40,
        0.4,
        true,
        true,
        true,
        true,
        1500,
        true,
        "",
        List.of(),
        List.of(),
        List.of(),
        1800,
        true,
        1200,
        7,
        new LevelView("WELL", 0.95, 0.8, 1.05, 0.05),
        new UncertaintyView(0.13, Double.NaN, 0.5, true),
        new TrayKnownView("", Double.NaN, Double.NaN, null, 46.2, ""));
  }

  private void press(double uptimeS) {
    pedal(uptimeS, "pressed");
  }

  private void keptDown(double uptimeS) {
    pedal(uptimeS, "LONG");
  }

  private List<MarkKind> marks() {
    return log.currentPrint().map(Print::marks).orElse(List.of()).stream().map(Mark::kind).toList();
  }

  @Test
  void aMarkAndItsTakingBackAreEachConfirmedOnceByTheBuzzer() {
    press(100);
    press(100.4);
    assertEquals(List.of(Call.MARKED), pedal.calls, "two presses within a second are one mark");
    keptDown(101);
    keptDown(102);
    assertEquals(List.of(Call.MARKED, Call.TAKEN_BACK), pedal.calls);
    pedal.status = status(103);
    recorder.mark(MarkKind.PULL, "page");
    assertEquals(2, pedal.calls.size(), "what is refused is not confirmed");
    recorder.mark(MarkKind.IN, "page");
    recorder.undo();
    assertEquals(List.of(Call.MARKED, Call.TAKEN_BACK, Call.MARKED, Call.TAKEN_BACK), pedal.calls);
  }

  @Test
  void aFootSwitchOfAKeyboardFollowsTheSameRules() {
    pedal.status = status(100);
    recorder.pedalPressed();
    pedal.status = status(100.7);
    recorder.pedalPressed();
    assertEquals(List.of(MarkKind.IN), marks());
    pedal.status = status(160);
    recorder.pedalPressed();
    assertEquals(List.of(MarkKind.IN, MarkKind.EMERGENCE), marks());
    assertTrue(recorder.pedalHeld().isPresent());
    assertTrue(recorder.pedalHeld().isEmpty(), "only the mark of its own press");
    assertEquals(List.of(MarkKind.IN), marks());
    press(170);
    assertTrue(recorder.pedalHeld().isPresent(), "either pedal is the same foot");
  }

  @Test
  void aLongPressTakesBackItsOwnMark() {
    press(100);
    press(160);
    assertEquals(List.of(MarkKind.IN, MarkKind.EMERGENCE), marks());
    keptDown(161);
    assertEquals(List.of(MarkKind.IN), marks());
    press(170);
    assertEquals(List.of(MarkKind.IN, MarkKind.EMERGENCE), marks(), "and may be made again");
  }

  @Test
  void aLongPressThatBeganAPrintTakesThePrintBack() {
    press(100);
    keptDown(101);
    assertEquals(List.of(), marks());
  }

  @Test
  void aSecondLongPressWithoutAMarkOfItsOwnTakesNothingBack() {
    press(100);
    press(160);
    keptDown(161);
    keptDown(162);
    assertEquals(List.of(MarkKind.IN), marks());
  }

  @Test
  void aPressThatBouncedMeansTheSameMark() {
    press(100);
    press(160);
    press(160.5);
    keptDown(161.5);
    assertEquals(List.of(MarkKind.IN), marks());
  }

  @Test
  void aMarkOfThePageIsNotTakenBackByThePedal() {
    press(100);
    pedal.status = status(100.5);
    recorder.mark(MarkKind.EMERGENCE, "page");
    keptDown(101);
    assertEquals(List.of(MarkKind.IN, MarkKind.EMERGENCE), marks());
  }
}
