package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import trayward.controller.event.Alarm;
import trayward.controller.event.AlarmState;
import trayward.controller.event.TripCause;
import trayward.controller.event.Warning;

/** What buzzer and lamp do while alarms come and go. */
class SignalsTest {

  private static final long TENTH = 100_000_000L;
  private static final Alarm HOT = unseen(TripCause.BATH_TOO_HOT);
  private static final Alarm AIR = unseen(TripCause.AIR_LOST);
  private static final Alarm PRESENCE = new Alarm(Warning.PRESENCE_DUE, AlarmState.UNACKNOWLEDGED);

  private final Signals signals = new Signals();
  private long now;

  private static Alarm unseen(TripCause cause) {
    return new Alarm(cause, AlarmState.UNACKNOWLEDGED);
  }

  private static Alarm as(TripCause cause, AlarmState state) {
    return new Alarm(cause, state);
  }

  /** Scans, a character for each: both, lamp alone, buzzer alone, neither. */
  private String scans(int count, Alarm... alarms) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < count; i++) {
      now += TENTH;
      signals.next(List.of(alarms), now);
      out.append(signals.buzzer() ? (signals.lamp() ? '#' : 'b') : (signals.lamp() ? 'l' : '.'));
    }
    return out.toString();
  }

  private void call(Call call) {
    signals.call(call, now + TENTH); // taken in the scan to come
  }

  @Test
  void anAlarmIsHeardAndSeenFromTheScanThatBringsIt() {
    assertEquals("....", scans(4));
    assertEquals("###..###..", scans(10, HOT));
    assertEquals("....", scans(4, as(TripCause.BATH_TOO_HOT, AlarmState.ACKNOWLEDGED)));
    assertEquals("....", scans(4, new Alarm(Warning.LEVEL_LOW, AlarmState.UNACKNOWLEDGED)));
  }

  @Test
  void presenceDueHasARhythmOfItsOwnAndAnAlarmComesBeforeIt() {
    assertEquals("##...##..........", scans(17, PRESENCE));
    assertEquals("###..", scans(5, PRESENCE, HOT));
    assertEquals("##...", scans(5, PRESENCE));
  }

  @Test
  void whatAHostAsksLastsForABoundedTimeAndEachAskingBeginsAnew() {
    call(Call.WATCH_NOW);
    assertEquals("#".repeat(15) + ".....", scans(20));
    assertEquals(
        ("#".repeat(15) + ".....").repeat(4), scans(80), "ten seconds, the bound of one asking");
    assertEquals(".".repeat(50), scans(50));
    call(Call.MARKED);
    assertEquals("##...", scans(5));
    call(Call.WATCH_NOW);
    scans(3);
    call(Call.MARKED);
    assertEquals("##" + ".".repeat(100), scans(102), "a mark ends the call to watch");
    call(Call.TAKEN_BACK);
    assertEquals("########..", scans(10));
  }

  @Test
  void everyAlarmOutranksACall() {
    call(Call.WATCH_NOW);
    assertEquals("###..###..", scans(10, HOT));
    call(Call.MARKED);
    assertEquals("###..###..", scans(10, HOT), "asking does not break the rhythm of an alarm");
    assertEquals("##...", scans(5, PRESENCE));
  }

  @Test
  void oneAlarmIsSilencedAndAnotherSounds() {
    scans(1, HOT);
    assertFalse(signals.silence(TripCause.AIR_LOST, now), "there is none");
    assertTrue(signals.silence(TripCause.BATH_TOO_HOT, now));
    assertEquals("ll..lll..l", scans(10, HOT), "the lamp goes on");
    assertTrue(scans(10, HOT, AIR).contains("b"), "a new alarm sounds");
    assertTrue(scans(10, AIR).matches(".*[#b].*"), "and goes on to");
  }

  @Test
  void silenceEndsByItselfAndWithTheAlarmThatComesAnew() {
    scans(1, HOT);
    assertTrue(signals.silence(TripCause.BATH_TOO_HOT, now));
    assertFalse(scans(1199, HOT).matches(".*[#b].*"));
    assertTrue(scans(5, HOT).matches(".*[#b].*"), "two minutes later it sounds again");
    assertTrue(signals.silence(TripCause.BATH_TOO_HOT, now));
    assertFalse(
        scans(10, as(TripCause.BATH_TOO_HOT, AlarmState.LATCHED_UNACKNOWLEDGED))
            .matches(".*[#b].*"),
        "gone, and still silent");
    assertTrue(scans(5, HOT).matches(".*[#b].*"), "it came back");
    assertTrue(signals.silence(TripCause.BATH_TOO_HOT, now));
    scans(1, as(TripCause.BATH_TOO_HOT, AlarmState.ACKNOWLEDGED));
    assertTrue(scans(5, HOT).matches(".*[#b].*"), "acknowledged, and come anew");
  }
}
