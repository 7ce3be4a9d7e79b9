package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** The last readings of a probe. */
class ReadingTrailTest {

  private static ReadingTrail of(double stepS, double... celsius) {
    ReadingTrail trail = ReadingTrail.START;
    for (int i = 0; i < celsius.length; i++) {
      trail = trail.next(new ThermalInput.Sample(celsius[i], Math.round((i + 1) * stepS * 1e9)));
    }
    return trail;
  }

  private static ReadingTrail falling(double from, double perS) {
    double[] all = new double[9];
    for (int i = 0; i < 9; i++) {
      all[i] = from + perS * (i - 7); // the median of the newest three is that of i = 7
    }
    return of(1, all);
  }

  @Test
  void onlyANewReadingIsNews() {
    ReadingTrail trail = of(1, 20, 21);
    assertSame(trail, trail.next(new ThermalInput.Sample(30, 2_000_000_000L)));
    assertSame(trail, trail.next(ThermalInput.Sample.NONE));
    assertEquals(false, trail.news(new ThermalInput.Sample(Double.NaN, 5)));
    assertEquals(true, trail.news(new ThermalInput.Sample(30, 3_000_000_000L)));
  }

  @Test
  void nineReadingsFillIt() {
    assertEquals(false, of(1, 1, 2, 3, 4, 5, 6, 7, 8).full());
    assertEquals(true, of(1, 1, 2, 3, 4, 5, 6, 7, 8, 9).full());
  }

  @Test
  void theMedianOfTheNewestThreeStandsAgainstOneOutlier() {
    assertEquals(21, of(1, 20, 90, 21).median());
    assertEquals(21, of(1, 90, 21, 20).median());
    assertEquals(21, of(1, 20, 21, 90).median());
    assertEquals(21, of(1, 21, 20, 90).median());
    assertEquals(21, of(1, 21).median(), "what there is");
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aReadingThatStoodAndLeapsWasFrozenUntilTheMedianIsOfNewOnes() {
    assertEquals(true, of(1, 9, 9, 9, 9, 9, 9, 9, 9, 9.5).thaws());
    assertEquals(true, of(1, 9, 9, 9, 9, 9, 9, 9, 8.5, 8.4).thaws());
    assertEquals(true, of(1, 9, 9, 9, 9, 9, 9, 7.6, 7.5, 7.6).thaws());
    assertEquals(false, of(1, 9, 9, 9, 9, 9, 7.6, 7.5, 7.6, 7.6).thaws(), "it is over");
  }

  @Test
  @Verifies(value = "SR-08", side = Side.ALLOWS)
  void aReadingThatMovesOrStandsOrStepsIsLive() {
    assertEquals(false, of(1, 9, 9, 9, 9, 9, 9, 9, 9.5).thaws(), "too few");
    assertEquals(false, of(1, 9, 9, 9, 9, 9, 9, 9, 9, 9).thaws());
    assertEquals(false, of(1, 9, 9, 9, 9, 9, 9, 9, 9, 9.4).thaws());
    assertEquals(false, of(1, 9, 9, 9, 9, 9, 9, 9, 9.1, 9.7).thaws(), "by steps");
    assertEquals(false, of(1, 9, 9, 9, 9, 9, 9, 9, 9, 10.5).thaws(), "no rate of a live one");
    assertEquals(false, of(1, 9.1, 9, 9, 9, 9, 9, 9, 9, 9.5).thaws(), "it moved just before");
  }

  @Test
  void theSlopeIsThatBetweenTwoMedians() {
    assertEquals(0.5, of(2, 1, 2, 3, 4, 5, 6, 7, 8, 9).slope(), 1e-12);
    assertEquals(2, of(2, 1, 2, 3, 4, 5, 6, 7, 8, 9).stepS(), 1e-12);
    assertEquals(0, of(2, 1, 2, 3, 4, 5, 6, 7, 8).slope(), "too few");
    assertEquals(0, of(1 / 6.0, 1, 2, 3, 4, 5, 6, 7, 8, 9).slope(), "within one second");
    // The newest and the oldest may be outliers.
    assertEquals(0.5, of(2, 80, 2, 3, 4, 5, 6, 7, 8, 90).slope(), 1.0 / 12 + 1e-12);
  }

  @Test
  void readingsWithinOneSecondHaveNoSlope() {
    assertEquals(0, over(1).slope());
    assertEquals(6 / 1.5, over(1.5).slope(), 1e-12);
  }

  /** Nine readings that rise by 1 K each; the eighth is taken that long after the second. */
  private static ReadingTrail over(double seconds) {
    double[] takenS = {0, 1, 1.125, 1.25, 1.375, 1.5, 1.625, 1 + seconds, 3};
    ReadingTrail trail = ReadingTrail.START;
    for (int i = 0; i < takenS.length; i++) {
      trail = trail.next(new ThermalInput.Sample(i, Math.round(takenS[i] * 1e9)));
    }
    return trail;
  }

  /**
   * The reference bath at 40 °C loses 95 W (F0: 45 W of it by evaporation): 0.028 K/s for 0.8 L.
   */
  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aFallFasterThanTwiceAllLossesIsNoBath() {
    double most = 2 * (45.02 + 50) / (0.8 * 4180);
    assertEquals(true, fallsBeyond(falling(40, -(most + 0.031))));
  }

  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void aSlowerOneMayBe() {
    double most = 2 * (45.02 + 50) / (0.8 * 4180);
    assertEquals(false, fallsBeyond(falling(40, -(most + 0.029))));
    assertEquals(false, fallsBeyond(falling(40, 0.5)));
  }

  private static boolean fallsBeyond(ReadingTrail trail) {
    return trail.fallsBeyond(TrayModel.REFERENCE, RoomModel.REFERENCE);
  }

  @Test
  void twiceTheLiquidCoolsHalfAsFast() {
    TrayModel two = new TrayModel(2, 0.072, 1100, 18, 2.5, 0.5, 250, 1);
    double most = 2 * (45.02 + 50) / (1.6 * 4180);
    assertEquals(true, falling(40, -(most + 0.031)).fallsBeyond(two, RoomModel.REFERENCE));
    assertEquals(false, falling(40, -(most + 0.029)).fallsBeyond(two, RoomModel.REFERENCE));
  }
}
