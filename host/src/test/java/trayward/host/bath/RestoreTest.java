package trayward.host.bath;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is poured to restore a bath is poured, and the mass balance says what it then is. */
class RestoreTest {

  private static BathContents poured(BathContents bath, Solution what, double ml) {
    return ml <= 0
        ? bath
        : ((Checked.Good<?>) bath.after(new BathChange.Poured(what, ml))).value()
                instanceof BathContents after
            ? after
            : bath;
  }

  private static BathContents bath(double litres, double bromideMl, double sulfiteMl) {
    BathContents bath = BathContents.empty(1);
    bath = poured(bath, Solution.WATER, 1000 * litres);
    bath = poured(bath, Solution.bromide(10), bromideMl);
    return poured(bath, Solution.sulfite(10), sulfiteMl);
  }

  @Test
  void whatIsPouredBringsBothSaltsBack() {
    Random random = new Random(5);
    for (int i = 0; i < 500; i++) {
      BathContents now = bath(0.5 + random.nextDouble(), 5 * random.nextDouble(), 50);
      double bromide = now.bromideGPerL().value() + 0.2 + 3 * random.nextDouble();
      double sulfite = now.sulfiteGPerL().value() + 0.2 + 20 * random.nextDouble();
      Restore restore = Restore.of(now, bromide, sulfite);
      BathContents then = poured(now, Solution.bromide(10), restore.bromideMl());
      then = poured(then, Solution.sulfite(10), restore.sulfiteMl());
      assertEquals(bromide, then.bromideGPerL().value(), 1e-9);
      assertEquals(sulfite, then.sulfiteGPerL().value(), 1e-9);
      assertEquals(List.of(), restore.tooMuch());
    }
  }

  /** 1 g/L too little in a litre: 1 g at 0.1 g/mL, and what thins: 1 / (0.1 - 0.001) mL. */
  @Test
  void oneSaltAloneIsArithmeticOnPaper() {
    Restore restore = Restore.of(bath(1, 0, 0), 1, 0);
    assertEquals(1 / 0.099, restore.bromideMl(), 1e-9);
    assertEquals(0, restore.sulfiteMl());
  }

  @Test
  void whatIsTooMuchCanOnlyBeThinnedAndTheOtherIsStillBroughtBack() {
    BathContents now = bath(1, 20, 10);
    Restore restore = Restore.of(now, now.bromideGPerL().value() / 2, 3);
    assertEquals(0, restore.bromideMl());
    assertTrue(restore.sulfiteMl() > 15, restore.toString());
    assertEquals(1, restore.tooMuch().size());
    assertTrue(restore.tooMuch().get(0).contains("1030 mL of water"), restore.toString());
    assertTrue(
        Restore.of(now, 0, 3).tooMuch().get(0).contains("more than water could thin"),
        "there was none then");
  }

  @Test
  void lessThanASyringeCanTellIsNothing() {
    BathContents now = bath(1, 10, 10);
    Restore restore =
        Restore.of(now, now.bromideGPerL().value() + 0.01, now.sulfiteGPerL().value() - 0.0001);
    assertEquals(new Restore(0, 0, List.of()), restore);
    assertInstanceOf(Restore.class, Restore.of(BathContents.empty(1), 0.5, 5));
  }
}
