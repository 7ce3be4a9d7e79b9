package trayward.host.bath;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Making a bath up; own arithmetic. */
class MakeUpTest {

  @Test
  void partsBecomeMillilitres() {
    MakeUp up = new MakeUp(new Dilution(List.of(1.0, 1.0), 20), 2200);
    assertEquals(List.of(100.0, 100.0), up.concentratesMl());
    assertEquals(2000, up.waterMl(), 1e-9);
    assertThrows(
        IllegalArgumentException.class, () -> new MakeUp(new Dilution(List.of(1.0), 7), 0));
  }

  /** Weight in volume: 8 mL of 10 % in a litre are 0.8 g/L; on top of a litre 0.79365 g/L. */
  @Test
  void aDoseIsTheWayBack() {
    Dose dose = Dose.ofPercent(10);
    assertEquals(8, dose.inPlaceMl(1000, 875, 0, 0.8).orElseThrow(), 1e-12);
    assertEquals(8, dose.onTopMl(1000, 0, 0.8 / 1.008).orElseThrow(), 1e-9);
    assertEquals(0, dose.onTopMl(1000, 0.8, 0.8).orElseThrow());
  }

  @Test
  void noDoseTakesAnythingOutOrNeedsMoreThanThereIsRoomFor() {
    Dose dose = Dose.ofPercent(10);
    assertTrue(dose.inPlaceMl(1000, 875, 0.8, 0.5).isEmpty());
    assertTrue(dose.onTopMl(1000, 0.8, 0.5).isEmpty());
    assertTrue(dose.onTopMl(1000, 0, 100).isEmpty());
    assertTrue(dose.inPlaceMl(1000, 5, 0, 0.8).isEmpty());
    assertThrows(IllegalArgumentException.class, () -> Dose.ofPercent(0));
  }
}
