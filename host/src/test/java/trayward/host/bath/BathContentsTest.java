package trayward.host.bath;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The mass balance of a bath, against arithmetic that can be done on paper. */
class BathContentsTest {

  private static final Amount NONE = Amount.ZERO;
  private static final double EIGHT_BY_TEN_M2 = 0.0516128; // 8 x 10 inches of 25.4 mm

  private static BathContents of(BathContents before, BathChange change) {
    return assertInstanceOf(BathContents.class, good(before.after(change)));
  }

  private static Object good(Checked<BathContents> checked) {
    return checked instanceof Checked.Good<BathContents> g ? g.value() : checked;
  }

  private static Problem bad(Checked<BathContents> checked) {
    return assertInstanceOf(Checked.Bad.class, checked).problem();
  }

  private static BathContents water(long id, double ml) {
    return of(BathContents.empty(id), new BathChange.Poured(Solution.WATER, ml));
  }

  /** 10 % weight in volume is 100 g in a litre of solution: 8 mL of it bring 0.8 g. */
  @Test
  void tenPercentBromideMadeUpToALitre() {
    BathContents b = water(1, 992);
    b = of(b, new BathChange.Poured(Solution.bromide(10), 8));
    assertEquals(0.8, b.bromideGPerL().value(), 1e-12);
    assertEquals(6.723, 1000 * b.bromideGPerL().value() / MolarMass.KBR, 0.001);
    BathContents added = of(water(1, 1000), new BathChange.Poured(Solution.bromide(10), 8));
    assertEquals(0.79365, added.bromideGPerL().value(), 1e-5);
    // 2 % of the stock, 2 % of the syringe, and the litre's own 2 %: by squares.
    assertEquals(0.8 * Math.sqrt(3) * 0.02, b.bromideGPerL().standard(), 3e-4);
  }

  @Test
  void aConcentrateIsCountedInPartsOfTheWhole() {
    Solution a = new Solution("A", true, NONE, Amount.exactly(80));
    BathContents b = of(water(1, 1000), new BathChange.Poured(a, 50));
    b = of(b, new BathChange.Poured(new Solution("B", true, NONE, NONE), 50));
    assertEquals(1.0 / 22, b.share("A").value(), 1e-12);
    assertEquals(1.0 / 22, b.share("B").value(), 1e-12);
    assertEquals(80.0 / 22, b.sulfiteGPerL().value(), 1e-12);
  }

  /** One bromide for each silver: 1.5 g/m² of it are 13.906 mmol or 1.6548 g as KBr. */
  @Test
  void aSheetReleasesOneBromideForEachSilver() {
    PrintUse use = new PrintUse(Amount.exactly(1.5), NONE);
    assertEquals(1.6548, use.bromide().value(), 0.001);
    assertEquals(13.906, 1000 * 1.5 / MolarMass.AG, 0.001);
    BathContents b = of(water(1, 1000), new BathChange.Printed(EIGHT_BY_TEN_M2, use));
    assertEquals(85.41, 1000 * b.dissolved().bromideG().value(), 0.01);
    assertEquals(EIGHT_BY_TEN_M2, b.areaM2());
    // Two silver for each hydroquinone.
    assertEquals(
        39.51, 1000 * 1.5 * EIGHT_BY_TEN_M2 / MolarMass.AG / 2 * MolarMass.HYDROQUINONE, 0.01);
  }

  /** x(n+1) = (1 - f) fresh + f x(n) + 0.3, and its limit fresh + 0.3 / (1 - f) where f is kept. */
  @Test
  void carryOverFromSessionToSessionReachesItsLimit() {
    double[] expected = {0.65, 0.725, 0.7625, 0.78125};
    for (int i = 0; i < expected.length; i++) {
      assertEquals(expected[i], afterSessions(i + 1, 0.5, 0.5), 1e-9);
    }
    assertEquals(0.8, afterSessions(60, 0.5, 0.5), 1e-9);
    assertEquals(0.6, afterSessions(60, 0.25, 0.5), 1e-9);
    assertEquals(1.4, afterSessions(120, 0.75, 0.5), 1e-9);
  }

  /**
   * A litre made of a kept share and fresh developer of 0.2 g/L; the session's prints add 0.3 g.
   */
  private static double afterSessions(int sessions, double kept, double beginning) {
    Solution fresh = new Solution("fresh", false, Amount.exactly(0.2), NONE);
    Solution first = new Solution("first", false, Amount.exactly(beginning), NONE);
    BathContents old = of(BathContents.empty(1), new BathChange.Poured(first, 1000));
    PrintUse use = new PrintUse(Amount.exactly(0.3 * MolarMass.AG / MolarMass.KBR), NONE);
    for (int i = 0; i < sessions; i++) {
      BathContents next =
          of(BathContents.empty(i + 2), new BathChange.Poured(fresh, 1000 * (1 - kept)));
      next = of(next, new BathChange.CarriedOver(old, 1000 * kept));
      old = of(next, new BathChange.Printed(1, use));
    }
    return old.bromideGPerL().value();
  }

  /**
   * Share of the bath k sessions ago is (1 - f) f^k; with a half kept the mean age is a session.
   */
  @Test
  void theLineageIsAGeometricSeries() {
    BathContents bath = water(1, 1000);
    for (int id = 2; id <= 9; id++) {
      bath = of(water(id, 500), new BathChange.CarriedOver(bath, 500));
    }
    Map<Long, Double> shares = bath.shares();
    for (int k = 0; k < 8; k++) {
      assertEquals(0.5 * Math.pow(0.5, k), shares.getOrDefault(9L - k, 0.0), 1e-12);
    }
    assertEquals(1, shares.values().stream().mapToDouble(d -> d).sum(), 1e-12);
  }

  /**
   * A litre, sheets that carry out 10 mL and release 25.6 mg, topped up with 0.5 g/L: towards 0.5 +
   * 25.6 / 10 = 3.06 g/L, a hundredth of the way each sheet.
   */
  @Test
  void replenishmentGoesTowardsItsSteadyState() {
    Solution toppedUp = new Solution("replenisher", false, Amount.exactly(0.5), NONE);
    PrintUse use =
        new PrintUse(Amount.exactly(25.6e-3 * MolarMass.AG / MolarMass.KBR), Amount.exactly(10));
    BathContents b = of(BathContents.empty(1), new BathChange.Poured(toppedUp, 1000));
    for (int i = 0; i < 20; i++) {
      b = of(b, new BathChange.Printed(1, use));
      b = of(b, new BathChange.Poured(toppedUp, 10));
    }
    assertEquals(0.96616, b.bromideGPerL().value(), 1e-5);
  }

  @Test
  void waterThatGoesLeavesEverythingElseAndAReadLevelCorrectsIt() {
    BathContents b = of(water(1, 990), new BathChange.Poured(Solution.bromide(10), 10));
    BathContents dry = of(b, new BathChange.Evaporated(new Amount(100, 20), 0));
    assertEquals(1 / 0.9, dry.bromideGPerL().value(), 1e-12);
    BathContents read = of(dry, new BathChange.LevelRead(new Amount(0.8, 0.02)));
    assertEquals(1 / 0.8, read.bromideGPerL().value(), 1e-12);
    assertEquals(20, read.millilitres().standard());
    assertTrue(read.bromideGPerL().standard() > 0);
  }

  @Test
  void whatIsPouredAwayTakesItsShareOfAllThatIsInIt() {
    BathContents b = of(water(1, 950), new BathChange.Poured(Solution.sulfite(10), 50));
    BathContents half = of(b, new BathChange.PouredAway(500));
    assertEquals(b.sulfiteGPerL().value(), half.sulfiteGPerL().value(), 1e-12);
    assertEquals(2.5, half.dissolved().sulfiteG().value(), 1e-12);
    assertEquals(500, half.millilitres().value(), 1e-9);
  }

  @Test
  void whatCannotBeIsRefusedWithItsFieldAndWhatIsAccepted() {
    BathContents b = water(1, 500);
    List<BathChange> wrong =
        List.of(
            new BathChange.Poured(Solution.WATER, -5),
            new BathChange.Poured(Solution.WATER, Double.NaN),
            new BathChange.Poured(Solution.WATER, 9000),
            new BathChange.PouredAway(501),
            new BathChange.PouredAway(0),
            new BathChange.CarriedOver(b, 501),
            new BathChange.Evaporated(Amount.exactly(-1), 0),
            new BathChange.LevelRead(Amount.exactly(0)),
            new BathChange.LevelRead(Amount.exactly(21)),
            new BathChange.Printed(0, PrintUse.STANDARD),
            new BathChange.Printed(3, PrintUse.STANDARD));
    for (BathChange change : wrong) {
      Problem problem = bad(b.after(change));
      assertTrue(!problem.field().isEmpty() && !problem.accepted().isEmpty(), change.toString());
    }
    assertEquals("area_m2", bad(b.after(wrong.get(9))).field());
    assertTrue(bad(b.after(wrong.get(3))).accepted().contains("500 mL"));
    assertInstanceOf(
        Checked.Bad.class,
        BathContents.empty(1).after(new BathChange.Printed(0.05, PrintUse.STANDARD)));
  }

  /**
   * Vapour is reckoned, not seen: by arithmetic alone a tray never runs dry, and says its doubt.
   */
  @Test
  void aReckonedVapourLeavesATenthAndAWideDoubt() {
    BathContents left = of(water(1, 500), new BathChange.Evaporated(Amount.exactly(600), 7200));
    assertEquals(50, left.millilitres().value(), 1e-9);
    assertEquals(450, left.millilitres().standard(), 1);
    assertEquals(7200, left.hotS());
  }

  /** What went in is in it or has gone out with it: over random lives of a bath nothing is made. */
  @Test
  void bromideIsNeitherMadeNorLost() {
    Random random = new Random(7);
    for (int life = 0; life < 200; life++) {
      BathContents b = of(water(1, 900), new BathChange.Poured(Solution.bromide(10), 20));
      double in = b.dissolved().bromideG().value();
      double out = 0;
      for (int i = 0; i < 30; i++) {
        double before = b.dissolved().bromideG().value();
        switch (random.nextInt(4)) {
          case 0 -> {
            b = of(b, new BathChange.Poured(Solution.bromide(10), 1 + random.nextInt(5)));
            in += b.dissolved().bromideG().value() - before;
          }
          case 1 -> b = of(b, new BathChange.Evaporated(Amount.exactly(random.nextInt(10)), 0));
          case 2 -> {
            double ml = 1 + random.nextInt(20);
            out += ml / 1000 * b.bromideGPerL().value();
            b = of(b, new BathChange.PouredAway(ml));
          }
          default -> {
            PrintUse use = new PrintUse(Amount.exactly(1), Amount.exactly(100));
            out += 0.1 * 100 / 1000 * b.bromideGPerL().value();
            b = of(b, new BathChange.Printed(0.1, use));
            in += 0.1 * use.bromide().value();
          }
        }
      }
      assertEquals(in - out, b.dissolved().bromideG().value(), 1e-9);
    }
  }
}
