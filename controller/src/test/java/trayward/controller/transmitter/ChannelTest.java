package trayward.controller.transmitter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.port.RawReading;
import trayward.controller.port.RawReading.Kind;
import trayward.controller.sense.ProbeLimits;
import trayward.controller.sense.ProbeTrack;
import trayward.controller.sense.ReadingKind;
import trayward.controller.sense.Thermistor;

/** From registers to the class of a reading (SR-08). */
class ChannelTest {

  private static final long SECOND = 1_000_000_000L;
  private static final ProbeLimits PLATE = new ProbeLimits(-5, 125, 8, 4 * SECOND);

  private static Channel channel(
      RegisterType type, double scale, double offset, Reports reports, OptionalDouble fault) {
    return new Channel(1, 4, 0, type, false, scale, offset, reports, fault);
  }

  private static Channel tenths() {
    return channel(RegisterType.INT16, 0.1, 0, new Reports.Celsius(), OptionalDouble.of(-32_768));
  }

  private static Answer registers(int... values) {
    return new Answer.Registers(values);
  }

  @ParameterizedTest(name = "{0} {1} {2} is {3}")
  @CsvSource({
    // One register, by the definition of two's complement.
    "INT16, 0x0190, 0, 400",
    "INT16, 0xFF9B, 0, -101",
    "INT16, 0x8000, 0, -32768",
    "UINT16, 0xFF9B, 0, 65435",
    "INT32, 0x0000, 0x9C40, 40000",
    "INT32, 0xFFFF, 0xD8F1, -9999",
    // IEEE 754 single precision: 40.0 is 0x42200000, -10.125 is 0xC1220000 (own arithmetic).
    "FLOAT32, 0x4220, 0x0000, 40",
    "FLOAT32, 0xC122, 0x0000, -10.125",
  })
  void numbersLieInRegistersAsTheirTypeSays(String type, String first, String second, double is) {
    RegisterType of = RegisterType.of(type.toLowerCase(java.util.Locale.ROOT));
    int[] high = {Integer.decode(first), Integer.decode(second)};
    int[] low = {high[1], high[0]};
    assertEquals(is, of.number(of.words() == 1 ? new int[] {high[0]} : high, false));
    if (of.words() == 2) {
      assertEquals(is, of.number(low, true));
    }
  }

  @Test
  @Verifies(value = "SR-08", side = Verifies.Side.ALLOWS)
  void scaleAndOffsetGiveTheTemperature() {
    assertEquals(RawReading.transmitted(40, 7), tenths().reading(registers(400), 7));
    Channel fahrenheit =
        channel(
            RegisterType.UINT16, 1 / 1.8, -32 / 1.8, new Reports.Celsius(), OptionalDouble.empty());
    assertEquals(40, fahrenheit.reading(registers(104), 0).celsius(), 1e-9);
  }

  /** 115.5408 Ω is 40 °C by IEC 60751; 5327 Ω is 39.990396 °C by the published coefficients. */
  @Test
  void resistancesBecomeTemperatures() {
    Channel pt100 =
        channel(RegisterType.UINT16, 0.01, 0, new Reports.Pt100Ohm(), OptionalDouble.empty());
    assertEquals(40, pt100.reading(registers(11_554), 0).celsius(), 0.003);
    Thermistor published = new Thermistor.SteinhartHart(1.129148e-3, 2.34125e-4, 8.76741e-8);
    Channel ntc =
        channel(
            RegisterType.UINT16,
            1,
            0,
            new Reports.ThermistorOhm(published),
            OptionalDouble.empty());
    assertEquals(39.990396, ntc.reading(registers(5327), 0).celsius(), 1e-6);
  }

  @Test
  @Verifies(value = "SR-08", side = Verifies.Side.WITHHOLDS)
  void aSensorDeclaredBrokenAndAnAnswerThatDoesNotComeAreAnAbsentProbe() {
    assertEquals(Kind.ABSENT, tenths().reading(registers(0x8000), 0).kind());
    assertEquals(Kind.TRANSMITTED, tenths().reading(registers(0x8001), 0).kind());
    assertEquals(Kind.ABSENT, tenths().reading(new Answer.Nothing("silent"), 0).kind());
    assertEquals(Kind.ABSENT, tenths().reading(registers(), 0).kind());
    assertEquals(Kind.ABSENT, tenths().reading(registers(400, 0), 0).kind());
  }

  @ParameterizedTest
  @ValueSource(ints = {0x7FC0_0000, 0xFFC0_0000, 0x7F80_0000, 0xFF80_0000})
  void aNumberThatIsNoneIsAnAbsentProbe(int bits) {
    Channel single =
        channel(RegisterType.FLOAT32, 1, 0, new Reports.Celsius(), OptionalDouble.empty());
    Answer answer = registers(bits >>> 16, bits & 0xffff);
    assertEquals(Kind.ABSENT, single.reading(answer, 0).kind());
  }

  @Test
  void anAnswerWithAWrongCheckSumIsACrcError() {
    assertEquals(Kind.CRC_ERROR, tenths().reading(new Answer.CheckSumWrong(), 3).kind());
    assertEquals(3, tenths().reading(new Answer.CheckSumWrong(), 3).takenNanos());
  }

  private static ReadingKind judged(Answer answer, Channel channel) {
    return ProbeTrack.start(0)
        .next(channel.reading(answer, SECOND), SECOND, PLATE)
        .reading()
        .kind();
  }

  /** The power-on value is one of the 1-Wire chip's; a plate of 85.0 °C is a hot plate. */
  @Test
  void eightyFiveDegreesAndZeroAreTemperaturesLikeOthers() {
    assertEquals(ReadingKind.VALID, judged(registers(850), tenths()));
    assertEquals(ReadingKind.VALID, judged(registers(0), tenths()));
    RawReading oneWire = RawReading.frame(85, SECOND);
    assertEquals(
        ReadingKind.POWER_ON_VALUE,
        ProbeTrack.start(0).next(oneWire, SECOND, PLATE).reading().kind());
  }

  @Test
  void eachClassOfReadingComesFromRegistersToo() {
    assertEquals(ReadingKind.OUT_OF_RANGE, judged(registers(1251), tenths()));
    assertEquals(ReadingKind.ABSENT, judged(registers(0x8000), tenths()));
    assertEquals(ReadingKind.CRC_ERROR, judged(new Answer.CheckSumWrong(), tenths()));
    Channel pt100 =
        channel(RegisterType.UINT16, 0.01, 0, new Reports.Pt100Ohm(), OptionalDouble.empty());
    assertEquals(ReadingKind.OUT_OF_RANGE, judged(registers(0), pt100), "a short");
    assertEquals(ReadingKind.OUT_OF_RANGE, judged(registers(65_535), pt100), "a break");
    ProbeTrack track =
        ProbeTrack.start(0).next(tenths().reading(registers(400), SECOND), SECOND, PLATE);
    assertTrue(track.reading().valid());
    assertEquals(
        ReadingKind.IMPOSSIBLE_RATE,
        track
            .next(tenths().reading(registers(500), 2 * SECOND), 2 * SECOND, PLATE)
            .reading()
            .kind());
    assertEquals(
        ReadingKind.STALE,
        track.next(tenths().reading(registers(400), SECOND), 6 * SECOND, PLATE).reading().kind());
  }

  @Test
  void itsPlaceOnTheLineIsItsName() {
    assertEquals("transmitter-1-4-0", tenths().name());
  }
}
