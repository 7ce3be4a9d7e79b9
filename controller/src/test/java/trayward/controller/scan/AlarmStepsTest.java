package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmState;
import trayward.controller.event.AlarmStep;
import trayward.controller.event.EventKind;
import trayward.controller.event.TripCause;
import trayward.controller.event.Warning;
import trayward.controller.keep.AlarmEntry;
import trayward.controller.keep.AlarmRecord;
import trayward.controller.port.LineReadings;
import trayward.controller.safety.Request;
import trayward.controller.safety.State;

/** What goes to the alarm record, from whole scans over the simulated tray. */
class AlarmStepsTest {

  @TempDir private Path folder;

  private static List<String> words(List<AlarmStep> steps) {
    return steps.stream().map(s -> s.cause().name() + " " + s.state()).toList();
  }

  private static List<String> of(TripCause cause, List<AlarmStep> steps) {
    return words(steps.stream().filter(s -> s.cause() == cause).toList());
  }

  private static LineReadings noAir(LineReadings in) {
    return new LineReadings(true, false, 0, true, false, false, false);
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void aTripAcknowledgedAndResetLeavesItsWholeLifeInOrder() {
    Deck deck = Deck.heating();
    assertEquals(List.of(), deck.events.alarms().take());
    deck.lines = AlarmStepsTest::noAir;
    deck.run(2);
    var acknowledged = deck.ask(Request.ACKNOWLEDGE);
    deck.run(1);
    assertTrue(acknowledged.getNow(Answer.refused("")).accepted());
    deck.lines = in -> in;
    deck.run(20); // spin-up, and the time a condition must be gone
    var unused = deck.ask(Request.RESET);
    assertEquals(State.OFF, deck.run(1).state());
    List<AlarmStep> steps = deck.events.alarms().take();
    assertEquals(
        List.of(
            "AIR_LOST UNACKNOWLEDGED",
            "AIR_LOST ACKNOWLEDGED",
            "AIR_LOST LATCHED_ACKNOWLEDGED",
            "AIR_LOST NORMAL"),
        of(TripCause.AIR_LOST, steps));
    List<Long> times = steps.stream().map(AlarmStep::atNanos).toList();
    assertEquals(times.stream().sorted().toList(), times);
    // The reader of events has its own copy of each step, in the same order.
    assertEquals(
        words(steps),
        deck.told.stream()
            .filter(e -> e.kind() == EventKind.ALARM)
            .map(e -> e.subject() + " " + e.detail())
            .toList());
  }

  @Test
  void aTripThatFlickersAroundItsLimitForAnHourMakesOneStepEachWayAndNotThousands() {
    AlarmSteps steps = new AlarmSteps(10_000);
    List<AlarmStep> told = new ArrayList<>();
    long now = 0;
    for (int i = 0; i < 36_000; i++) {
      AlarmState state = AlarmState.of(i % 3 != 0, false);
      now += Deck.PERIOD;
      told.addAll(steps.next(now, List.of(new Alarm(TripCause.BATH_TOO_HOT, state)), c -> ""));
    }
    List<Alarm> gone =
        List.of(new Alarm(TripCause.BATH_TOO_HOT, AlarmState.LATCHED_UNACKNOWLEDGED));
    for (int i = 0; i < 99; i++) {
      now += Deck.PERIOD;
      told.addAll(steps.next(now, gone, c -> ""));
    }
    assertEquals(List.of("BATH_TOO_HOT UNACKNOWLEDGED"), words(told).subList(1, told.size()));
    told.addAll(steps.next(now + Deck.PERIOD, gone, c -> ""));
    assertEquals("BATH_TOO_HOT LATCHED_UNACKNOWLEDGED", words(told).get(told.size() - 1));
  }

  @Test
  void airThatComesAndGoesInALockoutIsOneRecord() {
    Deck deck = Deck.heating();
    deck.lines = AlarmStepsTest::noAir;
    deck.run(1);
    for (int i = 0; i < 600; i++) {
      boolean air = i % 2 == 0;
      deck.lines = in -> new LineReadings(true, air, air ? 1500 : 0, true, false, false, false);
      deck.run(0.5);
    }
    assertEquals(
        List.of("AIR_LOST UNACKNOWLEDGED"), of(TripCause.AIR_LOST, deck.events.alarms().take()));
  }

  @Test
  void aResetRightAfterTheConditionWentIsToldAsNormalAndTheNextTripIsNew() {
    AlarmSteps steps = new AlarmSteps(10_000);
    Alarm on = new Alarm(TripCause.AIR_LOST, AlarmState.UNACKNOWLEDGED);
    Alarm acknowledged = new Alarm(TripCause.AIR_LOST, AlarmState.LATCHED_ACKNOWLEDGED);
    List<AlarmStep> told = new ArrayList<>(steps.next(0, List.of(), c -> ""));
    told.addAll(steps.next(1, List.of(on), c -> "the airflow switch"));
    told.addAll(steps.next(2, List.of(acknowledged), c -> ""));
    told.addAll(steps.next(3, List.of(), c -> ""));
    told.addAll(
        steps.next(
            4, List.of(new Alarm(TripCause.AIR_LOST, AlarmState.LATCHED_UNACKNOWLEDGED)), c -> ""));
    assertEquals(
        List.of(
            "AIR_LOST UNACKNOWLEDGED",
            "AIR_LOST ACKNOWLEDGED",
            "AIR_LOST NORMAL",
            "AIR_LOST LATCHED_UNACKNOWLEDGED"),
        words(told));
    assertEquals("the airflow switch", told.get(0).detail());
    assertEquals("", told.get(3).detail());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.WITHHOLDS)
  void aLatchThatWasThereAtPowerUpIsToldOnceAsSuch() {
    Deck deck = Deck.heating();
    deck.lines = AlarmStepsTest::noAir;
    deck.run(1);
    deck.events.alarms().take();
    deck.powerLossAndBack();
    deck.run(5);
    List<AlarmStep> steps = deck.events.alarms().take();
    assertEquals(1, of(TripCause.AIR_LOST, steps).size(), steps.toString());
    assertEquals("latched at this start", steps.get(0).detail());
  }

  @Test
  void warningsBesideATripAreToldByThemselves() {
    AlarmSteps steps = new AlarmSteps(10_000);
    Alarm low = new Alarm(Warning.LEVEL_LOW, AlarmState.UNACKNOWLEDGED);
    Alarm trip = new Alarm(TripCause.TRAY_DRY, AlarmState.UNACKNOWLEDGED);
    assertEquals(List.of("LEVEL_LOW UNACKNOWLEDGED"), words(steps.next(1, List.of(low), c -> "")));
    assertEquals(
        List.of("TRAY_DRY UNACKNOWLEDGED"), words(steps.next(2, List.of(trip, low), c -> "")));
    assertEquals(List.of("LEVEL_LOW NORMAL"), words(steps.next(3, List.of(trip), c -> "")));
  }

  @Test
  void aBoxNobodyEmptiesDropsTheOldestAndCountsThem() {
    AlarmBox box = new AlarmBox();
    for (int i = 0; i < 600; i++) {
      box.put(new AlarmStep(i, Warning.HOST_LOST, AlarmState.UNACKNOWLEDGED, ""));
    }
    assertEquals(88, box.dropped());
    List<AlarmStep> left = box.take();
    assertEquals(512, left.size());
    assertEquals(88, left.get(0).atNanos());
    assertEquals(List.of(), box.take());
  }

  @Test
  @Verifies(value = "SR-12", side = Side.ALLOWS)
  void anAlarmRecordThatCannotBeWrittenWithholdsNoHeat() throws Exception {
    Path file = Files.createDirectory(folder.resolve("alarms.txt"));
    AlarmRecord record = new AlarmRecord(file, folder.resolve("old.txt"));
    Deck deck = Deck.heating();
    record.add(List.of(new AlarmEntry(0, 0, "LEVEL_LOW", AlarmState.UNACKNOWLEDGED, "")));
    assertFalse(record.ok());
    assertTrue(deck.run(10).permitted());
  }
}
