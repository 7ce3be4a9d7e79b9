package trayward.controller.keep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.zip.CRC32C;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.event.TripCause;

/** SR-12: a latch survives; a record that cannot be believed is never taken for another. */
class KeepTextTest {

  @ParameterizedTest
  @EnumSource(TripCause.class)
  void everyCauseAloneComesBackAsItWas(TripCause cause) {
    comesBack(new KeepRecord(Set.of(cause), Optional.of(cause), false, false));
    comesBack(new KeepRecord(Set.of(cause), Optional.of(cause), true, true));
  }

  @ParameterizedTest
  @EnumSource(TripCause.class)
  void allCausesTogetherComeBackWithTheirFirstOut(TripCause first) {
    comesBack(new KeepRecord(EnumSet.allOf(TripCause.class), Optional.of(first), true, false));
  }

  @Test
  void aCleanRecordComesBackInEitherStateOfHeat() {
    comesBack(KeepRecord.CLEAN);
    comesBack(new KeepRecord(Set.of(), Optional.empty(), false, true));
    comesBack(new KeepRecord(Set.of(), Optional.empty(), true, false));
  }

  @Test
  void theTextIsEightLinesAPersonCanRead() {
    List<String> lines = KeepText.write(sample()).lines().toList();
    assertEquals(8, lines.size());
    assertEquals("trayward-keep 2", lines.get(0));
    assertEquals("latched=AIR_LOST,HEAT_NOT_ARRIVING", lines.get(1));
    assertEquals("first_out=HEAT_NOT_ARRIVING", lines.get(2));
    assertEquals("acknowledged=false", lines.get(3));
    assertEquals("heat_in_progress=true", lines.get(4));
    assertEquals("heater_closings=1234", lines.get(5));
    assertEquals("safety_closings=7", lines.get(6));
    assertTrue(lines.get(7).matches("crc=[0-9a-f]{8}"), lines.get(7));
  }

  @Test
  void whicheverByteIsAlteredInWhateverWayTheRecordIsNotBelieved() {
    for (KeepRecord record : List.of(sample(), KeepRecord.CLEAN)) {
      byte[] bytes = KeepText.write(record).getBytes(StandardCharsets.UTF_8);
      for (int at = 0; at < bytes.length; at++) {
        byte was = bytes[at];
        for (int flip = 1; flip < 256; flip++) {
          bytes[at] = (byte) (was ^ flip);
          refused(new String(bytes, StandardCharsets.UTF_8), "byte " + at + " flip " + flip);
        }
        bytes[at] = was;
      }
    }
  }

  @Test
  void aTextTornAnywhereIsNotBelieved() {
    String text = KeepText.write(sample());
    for (int length = 0; length < text.length(); length++) {
      refused(text.substring(0, length), "first " + length);
      refused(text.substring(length + 1), "without the first " + (length + 1));
    }
  }

  @Test
  void aTextWithMoreAfterItOrWrittenTwiceIsNotBelieved() {
    String text = KeepText.write(sample());
    refused(text + "\n", "one line more");
    refused(text + text, "twice");
    refused(text + "\0", "a zero byte more");
    refused(text.replace("\n", "\r\n"), "other line ends");
  }

  @Test
  void linesLostOrSwappedAreNotBelieved() {
    List<String> lines = KeepText.write(sample()).lines().toList();
    for (int i = 0; i < lines.size(); i++) {
      List<String> lost = new ArrayList<>(lines);
      lost.remove(i);
      refused(String.join("\n", lost) + "\n", "line " + i + " lost");
      if (i > 0) {
        List<String> swapped = new ArrayList<>(lines);
        swapped.add(i - 1, swapped.remove(i));
        refused(String.join("\n", swapped) + "\n", "line " + i + " swapped");
      }
    }
  }

  /** A good check sum does not make up for content that means nothing; "|" ends a line here. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "trayward-keep 2|latched=|first_out=|acknowledged=false|heat_in_progress=false|",
        "trayward-keep 1|latched=NO_SUCH|first_out=NO_SUCH|acknowledged=false|heat_in_progress=false|",
        "trayward-keep 1|latched=AIR_LOST|first_out=|acknowledged=false|heat_in_progress=false|",
        "trayward-keep 1|latched=|first_out=AIR_LOST|acknowledged=false|heat_in_progress=false|",
        "trayward-keep 1|latched=AIR_LOST|first_out=TRAY_DRY|acknowledged=true|heat_in_progress=true|",
        "trayward-keep 1|latched=AIR_LOST,|first_out=AIR_LOST|acknowledged=true|heat_in_progress=true|",
        "trayward-keep 1|latched=|first_out=|acknowledged=no|heat_in_progress=false|",
        "trayward-keep 1|latched=|first_out=|acknowledged=false|heat_in_progress=|",
        "trayward-keep 1|latched=|first_out=|acknowledged=false|heating=false|",
        "trayward-keep 1|latched=|first_out=|acknowledged=false|",
        "trayward-keep 3|latched=|first_out=|acknowledged=false|heat_in_progress=false|",
        "trayward-keep 2|latched=|first_out=|acknowledged=false|heat_in_progress=false|heater_closings=-1|safety_closings=0|",
        "trayward-keep 2|latched=|first_out=|acknowledged=false|heat_in_progress=false|heater_closings=1|safety_closings=x|",
        "trayward-keep 1|latched=|first_out=|acknowledged=false|heat_in_progress=false||"
      })
  void contentThatIsNotKnownIsRefusedUnderAGoodCheckSumToo(String lines) {
    String body = lines.replace('|', '\n');
    refused(body + "crc=" + crc(body) + "\n", lines);
  }

  @Test
  void theCheckSumIsTheOneComputedHere() {
    String text = KeepText.write(sample());
    String body = text.substring(0, text.indexOf("crc="));
    assertEquals(body + "crc=" + crc(body) + "\n", text);
  }

  @Test
  void aRecordWhoseFirstOutIsNotLatchedCannotBeMade() {
    Set<TripCause> one = Set.of(TripCause.AIR_LOST);
    assertThrows(
        IllegalArgumentException.class, () -> new KeepRecord(one, Optional.empty(), false, false));
    assertThrows(
        IllegalArgumentException.class,
        () -> new KeepRecord(one, Optional.of(TripCause.TRAY_DRY), false, false));
    assertThrows(
        IllegalArgumentException.class,
        () -> new KeepRecord(Set.of(), Optional.of(TripCause.AIR_LOST), false, false));
  }

  private static KeepRecord sample() {
    return new KeepRecord(
        Set.of(TripCause.HEAT_NOT_ARRIVING, TripCause.AIR_LOST),
        Optional.of(TripCause.HEAT_NOT_ARRIVING),
        false,
        true,
        new RelayWear(1234, 7));
  }

  @Test
  void aRecordOfTheVersionBeforeIsReadWithNewRelays() {
    String body =
        """
        trayward-keep 1
        latched=AIR_LOST
        first_out=AIR_LOST
        acknowledged=true
        heat_in_progress=true
        """;
    KeepRecord read =
        new KeepRecord(Set.of(TripCause.AIR_LOST), Optional.of(TripCause.AIR_LOST), true, true);
    assertEquals(new KeepLoad.Loaded(read), KeepText.read(body + "crc=" + crc(body) + "\n"));
  }

  private static void comesBack(KeepRecord record) {
    assertEquals(new KeepLoad.Loaded(record), KeepText.read(KeepText.write(record)));
  }

  private static void refused(String text, String what) {
    KeepLoad.Unreadable bad =
        assertInstanceOf(KeepLoad.Unreadable.class, KeepText.read(text), what);
    assertTrue(!bad.why().isEmpty(), what);
  }

  private static String crc(String body) {
    CRC32C crc = new CRC32C();
    crc.update(body.getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().toHexDigits((int) crc.getValue());
  }
}
