package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.LearnedTray.Figure;
import trayward.controller.regulate.TrayDoubt;
import trayward.controller.regulate.TrayLesson;
import trayward.controller.regulate.TrayModel;

/** What is remembered of a tray, and the litre that measures its heater. */
class TrayDeskTest {

  private static final long DAY = LocalDate.parse("2026-11-27").toEpochDay();

  @TempDir private Path folder;

  private TrayDesk desk(TrayModel declared) {
    return new TrayDesk(
        folder.resolve("controller-learned.txt"), "tray", declared, () -> DAY * 24 * 3600);
  }

  private static TrayModel declared(double litres, double watts) {
    TrayModel r = TrayModel.REFERENCE;
    return new TrayModel(
        litres,
        r.areaM2(),
        r.plateJPerK(),
        r.plateToBathWPerK(),
        r.bathLossWPerK(),
        r.plateLossWPerK(),
        watts,
        r.evaporationFactor());
  }

  /** A tray nobody would have guessed, declared as one litre over 250 W. */
  private static final String OTHER =
      """
      [tray]
      plate_j_per_k = 800
      plate_to_bath_w_per_k = 24
      bath_loss_w_per_k = 3.2
      [model]
      heater_w = 250
      liquid_l = 1.0
      """;

  @Test
  void aWholeWarmUpIsRememberedAndSteersTheNextStart() throws Exception {
    TrayDesk desk = desk(TrayModel.REFERENCE);
    assertEquals(TrayDoubt.DECLARED, desk.prior().doubt());
    desk.see(Warmed.up(1, OTHER));
    LearnedTray known = desk.known().orElseThrow();
    assertEquals(DAY, known.epochDay());
    assertEquals(800, known.plate().value(), 0.05 * 800);
    assertEquals(24, known.coupling().value(), 0.05 * 24);
    assertFalse(known.measured());
    assertEquals(250, known.heater().value());
    TrayPrior next = desk(TrayModel.REFERENCE).prior();
    assertEquals(DAY, next.from().orElseThrow().epochDay());
    assertEquals(known.plate().value(), next.belief().model().plateJPerK(), 0.01);
    assertTrue(next.doubt().plate() < 0.1);
    // A tray filled anew: the jug is as good as before.
    assertEquals(TrayDoubt.DECLARED.liquid(), next.doubt().liquid());
    assertEquals(TrayDoubt.DECLARED.heater(), next.doubt().heater());
  }

  @Test
  void anUnfinishedWarmUpIsNotRemembered() throws Exception {
    TrayLesson whole = Warmed.up(1, OTHER);
    TrayDesk desk = desk(TrayModel.REFERENCE);
    desk.see(new TrayLesson(whole.declaredL(), whole.found(), false));
    assertTrue(desk.known().isEmpty());
  }

  @Test
  void litresAreAlwaysThoseDeclaredNowAndOtherWattsAreHeardWithMoreDoubt() throws Exception {
    desk(TrayModel.REFERENCE).see(Warmed.up(2, OTHER));
    TrayPrior fuller = desk(declared(1.5, 250)).prior();
    assertEquals(1.5, fuller.belief().model().liquidL());
    TrayPrior stronger = desk(declared(1.0, 300)).prior();
    assertEquals(300, stronger.belief().model().heaterW());
    assertEquals(TrayDoubt.DECLARED.heater(), stronger.doubt().heater());
    assertTrue(stronger.doubt().plate() > Math.log(300 / 250.0));
    assertTrue(fuller.doubt().plate() < 0.1);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6})
  void afterAMeasuredLitreLaterWarmUpsSeeLitresWithinFivePercent(long seed) throws Exception {
    Random random = new Random(seed);
    double weak = 0.85 + 0.15 * random.nextDouble();
    TrayDesk desk = desk(TrayModel.REFERENCE);
    desk.see(Warmed.up(seed, weakened(weak, 1.0)));
    TrayDesk.Calibrated answer = desk.calibrate(1.0);
    assertTrue(answer.taken(), answer.words());
    LearnedTray known = desk.known().orElseThrow();
    assertTrue(known.measured());
    assertEquals(250 * weak, known.heater().value(), 0.03 * 250 * weak);
    assertEquals(0.02, known.heater().doubt(), 0.01);
    double litres = 0.75 + 0.5 * random.nextDouble();
    TrayLesson later = Warmed.up(seed + 100, weakened(weak, litres) + learnedFrom(known));
    assertEquals(litres, later.litres(), 0.05 * litres, "heater " + weak);
    assertTrue(2 * later.litresDoubt() < 0.08 * litres, "" + later.litresDoubt());
  }

  private static String weakened(double weak, double litres) {
    return "[tray]\nliquid_l = "
        + litres
        + "\nheater_w = "
        + 250 * weak
        + "\n[model]\nheater_w = 250\nliquid_l = 1.0\n";
  }

  private String learnedFrom(LearnedTray known) throws Exception {
    Files.writeString(folder.resolve(LearnedToml.FILE), LearnedToml.write(known));
    return "[learned]\nfrom = \"" + folder.toAbsolutePath() + "\"\n";
  }

  @Test
  void aLitreToldBeforeTheWarmUpMeasuresTheNextOneAndOnlyThat() throws Exception {
    TrayDesk desk = desk(TrayModel.REFERENCE);
    assertTrue(desk.calibrate(1.0).taken());
    assertTrue(desk.known().isEmpty());
    desk.see(Warmed.up(7, weakened(0.9, 1.0)));
    LearnedTray known = desk.known().orElseThrow();
    assertTrue(known.measured());
    assertEquals(225, known.heater().value(), 0.03 * 225);
  }

  @Test
  void aMeasuredHeaterStaysWhatItWasThroughLaterWarmUps() throws Exception {
    TrayDesk desk = desk(TrayModel.REFERENCE);
    desk.see(Warmed.up(8, weakened(0.9, 1.0)));
    assertTrue(desk.calibrate(1.0).taken());
    Figure heater = desk.known().orElseThrow().heater();
    TrayDesk next = desk(TrayModel.REFERENCE);
    next.see(Warmed.up(9, weakened(0.9, 0.8) + learnedFrom(desk.known().orElseThrow())));
    assertEquals(heater.value(), next.known().orElseThrow().heater().value(), 0.01);
    assertTrue(next.known().orElseThrow().measured());
    // Another heater declared: what was measured was the old one.
    assertFalse(desk(declared(1, 300)).prior().measured());
  }

  @Test
  void aLitreThatMakesNoSoundHeaterIsRefusedAndWhatWasKnownStays() throws Exception {
    TrayDesk desk = desk(TrayModel.REFERENCE);
    desk.see(Warmed.up(10, weakened(1.0, 1.0)));
    LearnedTray before = desk.known().orElseThrow();
    TrayDesk.Calibrated answer = desk.calibrate(2.0);
    assertFalse(answer.taken());
    assertTrue(answer.words().startsWith("heater: found"), answer.words());
    assertFalse(desk.calibrate(0.01).taken());
    assertFalse(desk.calibrate(Double.NaN).taken());
    assertEquals(before, desk.known().orElseThrow());
  }

  @Test
  void aCoveredTraysLessonIsNotRemembered() throws Exception {
    TrayDesk desk = desk(TrayModel.REFERENCE);
    desk.see(Warmed.up(11, "[tray]\ncovered = true\nbath_loss_w_per_k = 0.2\n"));
    assertTrue(desk.known().isEmpty());
  }
}
