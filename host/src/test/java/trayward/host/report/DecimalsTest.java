package trayward.host.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Decimals as a person would write them, against the platform's own arithmetic. */
class DecimalsTest {

  private static String put(double value, int places) {
    byte[] out = new byte[2 + Decimals.MOST];
    int end = Decimals.put(out, 2, value, places);
    return new String(out, 2, end - 2, StandardCharsets.US_ASCII);
  }

  @Test
  void zerosStandBeforeAndAfterThePoint() {
    assertEquals("0.0004", put(0.0004, 4));
    assertEquals("-0.05", put(-0.05, 2));
    assertEquals("7", put(7.4, 0));
    assertEquals("10.00", put(10, 2));
    assertEquals("0.000000", put(-0.0, 6));
    assertEquals("", put(Double.NaN, 3));
  }

  @Test
  void beyondWhatALongHoldsItSaturatesAndFits() {
    assertEquals("9223372036854775807", put(1e30, 0));
    assertEquals("-9223372036854.775807", put(Double.NEGATIVE_INFINITY, 6));
  }

  /** Values in quarters are exact, so that half up is all there is to tell. */
  @Test
  void everyNumberOfPlacesAgreesWithDecimalArithmetic() {
    Random dice = new Random(1);
    for (int k = 0; k < 20_000; k++) {
      double value = (dice.nextInt(2_000_000) - 1_000_000) / 4.0;
      int places = k % 7;
      BigDecimal half = BigDecimal.valueOf(value);
      RoundingMode mode = value < 0 ? RoundingMode.HALF_DOWN : RoundingMode.HALF_UP;
      String wanted = half.setScale(places, mode).toPlainString();
      assertEquals(wanted, put(value, places), value + " to " + places);
      StringBuilder appended = new StringBuilder();
      Decimals.append(appended, value, places);
      assertEquals(wanted, appended.toString());
    }
  }
}
