package trayward.host.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import trayward.controller.station.Block;
import trayward.controller.station.EventRegisters;

/** Events as they are taken from a controller's slots, which are worked out here by hand. */
class EventFeedTest {

  private static final int KIND_NOTE = 15;

  private final EventFeed feed = new EventFeed();
  private long newest;
  private boolean down;

  /** The slots of a controller whose event n says "n". */
  private @Nullable Block read(int address, int words) {
    if (down) {
      return null;
    }
    int[] block = new int[words];
    for (int at = 0; at < words; at += EventRegisters.EACH) {
      int slot = (address - EventRegisters.BASE + at) / EventRegisters.EACH;
      long number = newest - Math.floorMod(newest - slot, EventRegisters.SLOTS);
      block[at + 1] = (int) number;
      block[at + 3] = (int) (10 * number);
      block[at + 4] = KIND_NOTE;
      String text = String.format(java.util.Locale.ROOT, "%02d", number);
      block[at + 5] = (text.charAt(0) << 8) | text.charAt(1);
    }
    return new Block(address, block);
  }

  private List<String> news(long count) {
    newest = count;
    return feed.news(count, 99, this::read).stream()
        .map(e -> e.subject().equals("link") ? e.detail() : e.subject())
        .toList();
  }

  private static List<String> numbers(long from, long to) {
    return LongStream.rangeClosed(from, to)
        .mapToObj(n -> String.format(java.util.Locale.ROOT, "%02d", n))
        .toList();
  }

  @Test
  void eachEventIsToldOnceAndInOrder() {
    assertEquals(numbers(1, 3), news(3));
    assertEquals(List.of(), news(3));
    assertEquals(numbers(4, 16), news(16));
    assertEquals(numbers(17, 31), news(31));
  }

  @Test
  void whatWasBeforeThisHostCameIsTakenAsFarAsItStands() {
    assertEquals(numbers(25, 40), news(40));
  }

  @Test
  void moreEventsThanSlotsAreCountedAsMissed() {
    assertEquals(numbers(1, 2), news(2));
    List<String> expected = new ArrayList<>();
    expected.add("22 events were missed while the link was down");
    expected.addAll(numbers(25, 40));
    assertEquals(expected, news(40));
  }

  @Test
  void aReadThatFailsLosesNothing() {
    assertEquals(numbers(1, 2), news(2));
    down = true;
    assertEquals(List.of(), news(5));
    down = false;
    assertEquals(numbers(3, 5), news(5));
  }

  @Test
  void aControllerThatBeganAnewIsHeardFromItsFirstEvent() {
    assertEquals(numbers(1, 9), news(9));
    assertEquals(numbers(1, 2), news(2));
  }

  @Test
  void theTimeOfAnEventIsTheControllersUptime() {
    newest = 7;
    LinkEvent event = feed.news(7, 99, this::read).get(6);
    assertEquals(7, event.uptimeS());
    assertEquals("NOTE", event.kind());
    assertTrue(event.detail().isEmpty());
  }
}
