package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import org.junit.jupiter.api.Test;

/** Numbers of the candidates are values: compared by what they hold, changed by nobody. */
class PlateRowTest {

  private static double[] counted() {
    double[] all = new double[PlateGrid.SIZE];
    for (int i = 0; i < all.length; i++) {
      all[i] = i;
    }
    return all;
  }

  @Test
  void eachCandidateIsFoundByItsPlaceAndByTimeConstantAndLift() {
    PlateRow row = PlateRow.copyOf(counted());
    assertEquals(3 * PlateGrid.LIFTS + 7, row.at(3 * PlateGrid.LIFTS + 7));
    assertEquals(3 * PlateGrid.LIFTS + 7, row.at(3, 7));
    assertEquals(PlateGrid.SIZE - 1, row.at(PlateGrid.SIZE - 1));
  }

  @Test
  void rowsAreEqualByTheirNumbers() {
    double[] other = counted();
    other[100] = -1;
    assertEquals(PlateRow.copyOf(counted()), PlateRow.copyOf(counted()));
    assertEquals(PlateRow.copyOf(counted()).hashCode(), PlateRow.copyOf(counted()).hashCode());
    assertNotEquals(PlateRow.copyOf(counted()), PlateRow.copyOf(other));
    assertNotEquals(PlateRow.copyOf(counted()).hashCode(), PlateRow.copyOf(other).hashCode());
    assertEquals(PlateRow.of(2), PlateRow.owning(PlateRow.of(2).parts()));
    Object word = "2";
    assertNotEquals(PlateRow.of(2), word);
  }

  @Test
  void aPartReplacedIsReplacedInTheNewRowOnlyAndTheOthersAreShared() {
    PlateRow before = PlateRow.copyOf(counted());
    double[][] parts = before.parts();
    parts[5] = PlateRow.of(-3).parts()[5];
    PlateRow after = PlateRow.owning(parts);
    assertEquals(-3, after.at(5, 0));
    assertEquals(5 * PlateGrid.LIFTS, before.at(5, 0));
    assertSame(before.parts()[6], after.parts()[6]);
  }
}
