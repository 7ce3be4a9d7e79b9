package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import org.junit.jupiter.api.Test;

/** Rows are values: compared by what they hold, changed by nobody. */
class RowTest {

  private static Row of(double... values) {
    return Row.owning(values);
  }

  @Test
  void rowsAreEqualByTheirNumbers() {
    assertEquals(of(1, 2), of(1, 2));
    assertEquals(of(1, 2).hashCode(), of(1, 2).hashCode());
    assertNotEquals(of(1, 2), of(2, 1));
    assertNotEquals(of(1, 2), of(1, 2, 3));
    assertNotEquals(of(1, 2).hashCode(), of(2, 1).hashCode());
    assertEquals(of(Double.NaN), of(Double.NaN), "nothing read is the same nothing");
    Object other = "1, 2";
    assertNotEquals(of(1, 2), other);
  }

  @Test
  void whatIsPushedStandsInFrontAndTheLastIsDropped() {
    Row row = of(1, 2, 3);
    assertEquals(of(9, 1, 2), row.pushed(9));
    assertEquals(of(1, 2, 3), row, "unchanged");
    assertEquals(3, row.size());
    assertEquals(3, row.last());
    row.copy()[0] = 7;
    assertEquals(1, row.at(0));
  }
}
