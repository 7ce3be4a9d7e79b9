package trayward.host.web.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** Who is let in, how often it may be tried, and for how long. Time is a value here. */
class EntranceTest {

  private static final PasswordHash HASH =
      PasswordHash.of("correct horse".toCharArray(), new SecureRandom());

  private final AtomicLong nowMs = new AtomicLong(1_000_000);
  private final Entrance entrance = new Entrance(Optional.of(HASH), nowMs::get);

  private Entrance.Try enter(String client, String password) {
    return entrance.enter(client, password.toCharArray());
  }

  @Test
  void onlyTheTokenThatWasGivenIsAdmitted() {
    String token = assertInstanceOf(Entrance.Try.In.class, enter("a", "correct horse")).token();
    assertTrue(entrance.admits(token));
    for (String wrong : List.of("", "x", token + "x", token.substring(1), "x".repeat(10_000))) {
      assertFalse(entrance.admits(wrong));
    }
    entrance.leave(token);
    assertFalse(entrance.admits(token));
  }

  @Test
  void whereNoPasswordIsSetEverybodyIsAdmittedAndNobodyEnters() {
    Entrance open = new Entrance(Optional.empty(), nowMs::get);
    assertTrue(open.admits(""));
    assertInstanceOf(Entrance.Try.Wrong.class, open.enter("a", "".toCharArray()));
  }

  @Test
  void fiveWrongTriesAndThenOneEachHalfMinute() {
    for (int i = 0; i < 5; i++) {
      assertInstanceOf(Entrance.Try.Wrong.class, enter("a", "x"));
    }
    assertEquals(new Entrance.Try.Wait(30), enter("a", "correct horse"));
    assertInstanceOf(Entrance.Try.In.class, enter("b", "correct horse"), "another client");
    nowMs.addAndGet(29_000);
    assertEquals(new Entrance.Try.Wait(1), enter("a", "correct horse"));
    nowMs.addAndGet(1_000);
    assertInstanceOf(Entrance.Try.In.class, enter("a", "correct horse"));
  }

  @Test
  void aNetworkOfClientsIsSlowedToo() {
    int tried = 0;
    for (int i = 0; i < 1000; i++) {
      tried += enter("client " + i, "x") instanceof Entrance.Try.Wait ? 0 : 1;
    }
    assertEquals(50, tried);
  }

  @Test
  void aSessionEndsAfterSixteenHoursUnusedAndAfterAWeekInAnyCase() {
    Sessions sessions = new Sessions(new SecureRandom());
    long hour = 3_600_000;
    String token = sessions.open(0);
    assertTrue(sessions.use(token, 16 * hour - 1));
    assertFalse(sessions.use(token, 32 * hour - 1));
    String busy = sessions.open(0);
    for (int h = 10; h < 168; h += 10) {
      assertTrue(sessions.use(busy, h * hour));
    }
    assertFalse(sessions.use(busy, 168 * hour));
  }

  @Test
  void theSessionUnusedTheLongestMakesRoom() {
    Sessions sessions = new Sessions(new SecureRandom());
    List<String> tokens = new ArrayList<>();
    for (int i = 0; i < Sessions.MOST; i++) {
      tokens.add(sessions.open(i));
    }
    assertTrue(sessions.use(tokens.get(0), 100));
    tokens.add(sessions.open(101));
    assertFalse(sessions.use(tokens.get(1), 102));
    assertTrue(sessions.use(tokens.get(0), 102));
    assertTrue(sessions.use(tokens.get(Sessions.MOST), 102));
  }

  @Test
  void anAllowanceRemembersAThousandClientsAndNoMore() {
    Allowance allowance = new Allowance(1, 1000);
    for (int i = 0; i < Allowance.MOST_CLIENTS; i++) {
      assertTrue(allowance.take("client " + i, 0));
    }
    assertFalse(allowance.take("client 0", 0));
    assertTrue(allowance.take("one more", 0));
    assertTrue(allowance.take("client 1", 0), "the one that was silent the longest is forgotten");
    assertFalse(allowance.take("client 0", 500));
    assertTrue(allowance.take("client 0", 1000));
  }
}
