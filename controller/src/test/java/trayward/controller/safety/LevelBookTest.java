package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** The liquid by the book: each entry by itself. */
class LevelBookTest {

  private static LevelBook book(double said, double best, double low, double high) {
    return new LevelBook(said, best, low, high, false);
  }

  /** Latent heat at 40 °C: 2406.1 J/g (IAPWS); a gram is taken as a millilitre. */
  @Test
  void aGramEvaporatedIsHalfToTwiceAMillilitreInTheBounds() {
    LevelBook after = book(1, 0.9, 0.8, 0.95).evaporated(24.061, 40, 1000);
    assertEquals(1, after.saidL());
    assertEquals(0.89, after.bestL(), 1e-12);
    assertEquals(0.78, after.lowL(), 1e-12);
    assertEquals(0.945, after.highL(), 1e-12);
    assertEquals(book(1, 0, 0, 0), book(1, 0.001, 0.001, 0.001).evaporated(24_061, 40, 1000));
  }

  @Test
  void whoTopsUpTopsUpToTheMark() {
    assertEquals(book(1, 0.95, 0.85, 1.05), rounded(book(1, 0.9, 0.8, 1).poured(0.05)));
    // 0.2 L more than the best estimate misses: as full as was said, for so much may be gone.
    assertEquals(book(1, 1, 1, 1.2), rounded(book(1, 0.9, 0.8, 1).poured(0.2)));
    // Beyond what can have evaporated the tray is fuller than was said.
    assertEquals(book(1.3, 1.3, 1.3, 1.5), rounded(book(1, 0.9, 0.8, 1).poured(0.5)));
  }

  private static LevelBook rounded(LevelBook b) {
    return new LevelBook(
        round(b.saidL()), round(b.bestL()), round(b.lowL()), round(b.highL()), b.rated());
  }

  private static double round(double litres) {
    return Math.round(litres * 1e9) / 1e9;
  }

  @Test
  @Verifies(value = "SR-28", side = Side.WITHHOLDS)
  void aRateThatExcludesTheBookOverrulesIt() {
    LevelBook less = book(1, 0.9, 0.8, 1).seen(new LitreBounds(0.5, 0.4, 0.7));
    assertEquals(new LevelBook(1, 0.5, 0.4, 0.7, true), less);
    LevelBook again = less.seen(new LitreBounds(0.55, 0.45, 0.65));
    assertEquals(new LevelBook(1, 0.55, 0.45, 0.65, true), again, "from then on rates lead");
    LevelBook more = book(1, 0.9, 0.8, 1).seen(new LitreBounds(1.5, 1.2, 1.7));
    assertEquals(new LevelBook(1, 1.5, 1.2, 1.7, true), more);
  }

  @Test
  @Verifies(value = "SR-28", side = Side.ALLOWS)
  void aRateThatAgreesOnlyNarrowsTheBook() {
    LevelBook within = book(1, 0.9, 0.8, 1).seen(new LitreBounds(0.5, 0.7, 0.95));
    assertEquals(book(1, 0.9, 0.8, 0.95), within);
    assertEquals(book(1, 0.85, 0.8, 0.85), book(1, 0.9, 0.8, 1).seen(of(0.7, 0.85)));
    assertEquals(book(1, 0.95, 0.95, 1), book(1, 0.9, 0.8, 1).seen(of(0.95, 1.1)));
  }

  private static LitreBounds of(double low, double high) {
    return new LitreBounds((low + high) / 2, low, high);
  }

  @Test
  void boundsThatTouchDoNotExcludeEachOther() {
    LevelBook book = book(1, 0.9, 0.8, 1);
    assertFalse(book.against(of(0.5, 0.8)));
    assertTrue(book.against(of(0.5, 0.799)));
    assertFalse(book.against(of(1, 1.5)));
    assertTrue(book.against(of(1.001, 1.5)));
  }

  @Test
  void whatIsMissingIsAShareOfWhatWasSaid() {
    LevelBook book = book(2, 1.5, 1, 1.8);
    assertEquals(0.25, book.missing(), 1e-12);
    assertEquals(0.1, book.surelyMissing(), 1e-12);
    assertEquals(0.5, book.addL(), 1e-12);
    assertEquals(0, book(1, 1.2, 1, 1.3).addL());
  }

  @Test
  void boundsGrowAShareWiderAtBothEnds() {
    LitreBounds wide = new LitreBounds(1, 0.5, 2).wider(0.1);
    assertEquals(1, wide.bestL());
    assertEquals(0.45, wide.lowL(), 1e-12);
    assertEquals(2.2, wide.highL(), 1e-12);
  }
}
