package trayward.controller.station;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** How numbers stand in registers; the words are worked out by hand. */
class FormTest {

  private static int[] put(Form form, double value) {
    int[] words = new int[form.words()];
    form.put(value, words, 0);
    return words;
  }

  private static double back(Form form, int... words) {
    return form.get(words[0], words.length == 2 ? words[1] : 0);
  }

  @Test
  void aTemperatureIsSignedHundredths() {
    assertArrayEquals(new int[] {4025}, put(Form.HUNDREDTHS, 40.25));
    assertArrayEquals(new int[] {0xFFFF - 54}, put(Form.HUNDREDTHS, -0.55));
    assertEquals(-0.55, back(Form.HUNDREDTHS, 0xFFFF - 54));
  }

  @Test
  void whatIsNotValidIsTheContractsWord() {
    assertArrayEquals(new int[] {0x8000}, put(Form.HUNDREDTHS, Double.NaN));
    assertArrayEquals(new int[] {0x8000}, put(Form.HUNDREDTHS, 400), "does not fit");
    assertArrayEquals(new int[] {0x8000}, put(Form.HUNDREDTHS, Double.POSITIVE_INFINITY));
    assertArrayEquals(new int[] {0xFFFF}, put(Form.COUNT, -1));
    assertArrayEquals(new int[] {0x8000, 0}, put(Form.LONG_TENTHS, Double.NaN));
  }

  @Test
  void longNumbersHaveTheirHighWordFirst() {
    assertArrayEquals(new int[] {1, 2}, put(Form.LONG_COUNT, 65_538));
    assertEquals(65_538, back(Form.LONG_COUNT, 1, 2));
    assertArrayEquals(new int[] {0xFFFF, 0xFFFF}, put(Form.LONG_TENTHS, -0.1));
    assertEquals(-0.1, back(Form.LONG_TENTHS, 0xFFFF, 0xFFFF));
  }

  @ParameterizedTest
  @EnumSource(
      value = Form.class,
      mode = EnumSource.Mode.EXCLUDE,
      names = {"TEXT", "BITS"})
  void whatIsNotValidComesBackAsNoNumberAndTheRestAsItWas(Form form) {
    assertEquals(Double.NaN, back(form, put(form, Double.NaN)));
    for (double value : new double[] {0, 1, 2, 31}) {
      assertEquals(value, back(form, put(form, value)));
    }
  }
}
