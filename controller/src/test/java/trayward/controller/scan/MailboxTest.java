package trayward.controller.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.safety.Request;

/** SR-14: the way of requests to the scan thread; a stop has a place of its own in it. */
class MailboxTest {

  private final Mailbox mailbox = new Mailbox();

  private List<Ask> drained() {
    List<Ask> asks = new ArrayList<>();
    mailbox.drain(asks);
    return asks;
  }

  private static Request requestOf(Ask ask) {
    return ask instanceof Ask.Start
        ? Request.START
        : assertInstanceOf(Ask.OfInterlock.class, ask).request();
  }

  private void fill() {
    for (int i = 0; i < 1000; i++) {
      var unused = mailbox.ask(Request.ACKNOWLEDGE, false);
    }
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopGetsInThoughTheQueueIsFullAndIsServedFirst() {
    fill();
    CompletableFuture<Answer> stop = mailbox.ask(Request.STOP, false);
    assertFalse(stop.isDone(), "not refused");
    List<Ask> asks = drained();
    assertEquals(Request.STOP, requestOf(asks.get(0)));
    assertEquals(1 + 64, asks.size());
  }

  @Test
  @Verifies(value = "SR-14", side = Side.ALLOWS)
  void whatFindsTheQueueFullIsToldSoAtOnceAndANewScanMakesRoom() throws Exception {
    fill();
    CompletableFuture<Answer> start = mailbox.ask(Request.START, true);
    assertTrue(start.isDone());
    assertFalse(start.get().accepted());
    assertFalse(start.get().reason().isBlank());
    assertFalse(mailbox.setTemperature(40, true).get().accepted());
    drained();
    assertFalse(mailbox.ask(Request.START, true).isDone());
    assertEquals(Request.START, requestOf(drained().get(0)));
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void manyStopsAreOneAndEachScanHasItsOwn() {
    CompletableFuture<Answer> one = mailbox.stop();
    CompletableFuture<Answer> two = mailbox.ask(Request.STOP, true);
    List<Ask> asks = drained();
    assertEquals(1, asks.size());
    asks.get(0).answer().complete(Answer.DONE);
    assertTrue(one.isDone() && two.isDone());
    assertEquals(List.of(), drained());
    CompletableFuture<Answer> later = mailbox.stop();
    assertNotSame(one, later);
    assertFalse(later.isDone());
    assertEquals(1, drained().size());
  }

  @Test
  void requestsComeInTheOrderInWhichTheyWereAsked() {
    var ack = mailbox.ask(Request.ACKNOWLEDGE, false);
    var set = mailbox.setTemperature(42, true);
    var reset = mailbox.ask(Request.RESET, true);
    List<Ask> asks = drained();
    assertEquals(List.of(ack, set, reset), asks.stream().map(Ask::answer).toList());
    assertEquals(42, assertInstanceOf(Ask.SetTemperature.class, asks.get(1)).celsius());
    assertTrue(assertInstanceOf(Ask.OfInterlock.class, asks.get(2)).atTray());
  }
}
