package trayward.controller.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** Due dates over a real file and a clock that a test sets. */
class UpkeepDeskTest {

  private static final long FIRST = LocalDate.parse("2026-11-25").toEpochDay();

  @TempDir private Path folder;
  private long day = FIRST;

  private Path file() {
    return folder.resolve("controller-upkeep.txt");
  }

  private UpkeepDesk desk() {
    return new UpkeepDesk(file(), UpkeepPlan.STANDARD, () -> day * 24 * 3600 + 3600);
  }

  @Test
  @Verifies(value = "SR-23", side = Side.ALLOWS)
  void aFreshInstallationIsNotOverdueUntilAMonthHasGone() {
    UpkeepDesk desk = desk();
    assertEquals("", desk.startUnconfirmed());
    day = FIRST + 30;
    assertEquals("", desk.startUnconfirmed());
    assertEquals(Set.of(), desk.report().overdue());
  }

  @Test
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void anOverdueBreakerTestIsNamedWithItsDateThroughRestartsUntilItIsDone() {
    desk();
    day = FIRST + 31;
    assertEquals("the ground-fault breaker test was due on 2026-12-25", desk().startUnconfirmed());
    assertEquals("", desk().done(UpkeepItem.BREAKER_TEST));
    assertEquals("", desk().startUnconfirmed());
    assertEquals(day, desk().report().upkeep().last(UpkeepItem.BREAKER_TEST));
  }

  @ParameterizedTest
  @EnumSource(
      value = UpkeepItem.class,
      names = {"CARTRIDGE", "PROBE_CHECK", "FAN_SERVICE"})
  @Verifies(value = "SR-23", side = Side.ALLOWS)
  void whatElseIsOverdueIsShownAndAsksNothingAtAStart(UpkeepItem item) {
    UpkeepDesk desk = desk();
    day = FIRST + UpkeepPlan.STANDARD.days(item);
    assertFalse(desk.report().overdue().contains(item));
    day++;
    desk.done(UpkeepItem.BREAKER_TEST);
    assertTrue(desk.report().overdue().contains(item));
    assertEquals("", desk.startUnconfirmed());
    desk.done(item);
    assertFalse(desk.report().overdue().contains(item));
  }

  @Test
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void aClockBeforeTheRecordOrThisBuildIsNotSet() {
    UpkeepDesk desk = desk();
    day = FIRST - 1;
    assertEquals("the clock is not set: it shows 2026-11-24", desk.startUnconfirmed());
    day = 0;
    assertFalse(desk.report().clockSet());
    assertNotEquals("", desk.done(UpkeepItem.BREAKER_TEST));
    day = FIRST;
    assertTrue(desk.report().clockSet());
  }

  @Test
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void aFirstRunWithoutAClockAsksAndIsDueOnceTheClockIsSet() {
    day = 1;
    assertTrue(desk().startUnconfirmed().startsWith("the clock is not set"));
    day = FIRST;
    assertTrue(desk().startUnconfirmed().startsWith("the ground-fault breaker test was due"));
  }

  @Test
  @Verifies(value = "SR-23", side = Side.ALLOWS)
  void aDateRecordedByAClockYearsAheadIsMendedByDoingItAgain() {
    UpkeepDesk desk = desk();
    day = FIRST + 4000;
    desk.done(UpkeepItem.BREAKER_TEST);
    day = FIRST + 1;
    assertFalse(desk.report().clockSet());
    desk.done(UpkeepItem.BREAKER_TEST);
    assertEquals("", desk.startUnconfirmed());
  }

  @Test
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void aRecordThatIsTornOrAlteredMakesEverythingDue() throws Exception {
    desk();
    Files.writeString(
        file(), Files.readString(file()).replace("breaker-test=2026", "breaker-test=2036"));
    assertEquals(EnumSet.allOf(UpkeepItem.class), desk().report().overdue());
    Files.writeString(file(), "");
    assertNotEquals("", desk().startUnconfirmed());
    Files.writeString(file(), "x".repeat(5000));
    assertNotEquals("", desk().startUnconfirmed());
  }

  @Test
  @Verifies(value = "SR-23", side = Side.ALLOWS)
  void hoursAreCountedByMonotonicTimeWhateverTheClockDoesAndOutliveARestart() {
    UpkeepDesk desk = desk();
    for (long s = 0; s <= 40 * 3600; s += 10) {
      day = FIRST + (s % 7 == 0 ? 3000 : -3000);
      desk.count(s * 1_000_000_000L, s <= 20 * 3600, true);
    }
    day = FIRST;
    desk.save();
    UpkeepReport report = desk().report();
    assertEquals(20, report.upkeep().cartridgeHours(), 0.001);
    assertEquals(40, report.upkeep().fanHours(), 0.001);
    assertEquals(Set.of(), report.overdue());
  }

  @Test
  @Verifies(value = "SR-23", side = Side.WITHHOLDS)
  void aCartridgeIsOverdueByItsHoursBeforeItsDate() {
    UpkeepDesk desk = desk();
    for (long s = 0; s <= 40 * 3600 + 10; s += 10) {
      desk.count(s * 1_000_000_000L, true, false);
    }
    assertEquals(Set.of(UpkeepItem.CARTRIDGE), desk.report().overdue());
    desk.done(UpkeepItem.CARTRIDGE);
    assertEquals(0, desk.report().upkeep().cartridgeHours());
  }

  @Test
  void aGapInWhatIsToldCountsAsNoMoreThanTenSeconds() {
    UpkeepDesk desk = desk();
    desk.count(0, true, true);
    desk.count(3600L * 1_000_000_000L, true, true);
    desk.count(1800L * 1_000_000_000L, true, true);
    assertEquals(10.0 / 3600, desk.report().upkeep().fanHours(), 1e-9);
  }

  @Test
  void theDateOfThisBuildIsTheOneOfThePom() throws Exception {
    String pom = Files.readString(Path.of("..", "pom.xml"));
    String date = LocalDate.ofEpochDay(Upkeep.BUILD_DAY).toString();
    assertTrue(pom.contains("<project.build.outputTimestamp>" + date + "T"), date);
  }
}
