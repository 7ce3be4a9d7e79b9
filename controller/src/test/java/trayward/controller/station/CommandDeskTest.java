package trayward.controller.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.keep.CalibrationDesk;
import trayward.controller.keep.LearnedTray;
import trayward.controller.keep.UpkeepDesk;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.port.ProbeRole;
import trayward.controller.scan.Answer;
import trayward.controller.scan.EventBox;
import trayward.controller.scan.HostPulse;
import trayward.controller.scan.Mailbox;
import trayward.controller.scan.ScanTiming;
import trayward.controller.scan.Snapshot;

/** Commands as a host writes them, before a controller whose scan never comes. */
class CommandDeskTest {

  private static final int STOP = 1;
  private static final int START = 2;
  private static final int PRESENCE = 5;
  private static final int START_CONFIRMED = 10;
  private static final int ICE = 12;
  private static final int REFERENCE = 13;

  private final Waiting tray = new Waiting();
  private final CommandDesk desk = new CommandDesk(tray);

  private boolean write(int token, int code, int argument) {
    return desk.write(new CommandDesk.Written(token, code, argument, 3705, 120));
  }

  private CommandResult.Outcome outcome() {
    return desk.result().outcome();
  }

  @Test
  void aCommandWaitsForItsScanAndAnotherIsRefusedMeanwhile() {
    assertTrue(write(1, START, 0));
    assertEquals(CommandResult.Outcome.WAITING, outcome());
    assertFalse(write(2, START, 0));
    assertEquals(1, desk.token());
  }

  @Test
  @Verifies(value = "SR-14", side = Side.WITHHOLDS)
  void aStopOvertakesWhateverWaits() {
    assertTrue(write(1, ICE, 0));
    assertTrue(write(2, STOP, 0));
    assertEquals(2, desk.token());
    assertEquals(CommandResult.Outcome.WAITING, outcome());
  }

  @ParameterizedTest
  @ValueSource(ints = {START, START_CONFIRMED, PRESENCE})
  @Verifies(value = "SR-13", side = Side.WITHHOLDS)
  @Verifies(value = "SR-15", side = Side.WITHHOLDS)
  void aHostThatDoesNotStandAtTheTrayNeitherStartsNorShowsPresence(int code) {
    tray.atTray = false;
    assertTrue(write(1, code, 0));
    assertEquals(CommandResult.Outcome.REFUSED, outcome());
    assertTrue(desk.result().reason().contains("at the tray"), desk.result().reason());
  }

  @ParameterizedTest
  @ValueSource(ints = {START, START_CONFIRMED, PRESENCE})
  @Verifies(value = "SR-13", side = Side.ALLOWS)
  @Verifies(value = "SR-15", side = Side.ALLOWS)
  void oneThatDoesIsAskedInTheNextScan(int code) {
    assertTrue(write(1, code, 0));
    assertEquals(CommandResult.Outcome.WAITING, outcome());
  }

  @Test
  void aTokenWrittenAgainActsNot() {
    assertTrue(write(1, ICE, 0));
    assertTrue(write(1, ICE, 0));
    assertEquals("ice BATH", tray.asked);
    tray.asked = "";
    assertTrue(write(1, REFERENCE, 0));
    assertEquals("", tray.asked);
  }

  @Test
  void theResultIsTheAnswersWithItsReason() {
    write(1, ICE, 2);
    tray.answer.complete(Answer.refused("not still"));
    assertEquals(new CommandResult(1, CommandResult.Outcome.REFUSED, "not still"), desk.result());
    tray.answer = CompletableFuture.completedFuture(Answer.DONE);
    write(2, REFERENCE, 1);
    assertEquals(new CommandResult(2, CommandResult.Outcome.DONE, ""), desk.result());
    assertEquals("reference SECOND_BATH 37.05 0.12", tray.asked);
  }

  @Test
  void whatIsNoCommandAndNoArgumentIsSaidSo() {
    assertTrue(write(1, 0, 0));
    assertEquals(CommandResult.Outcome.UNKNOWN_COMMAND, outcome());
    assertTrue(write(2, ICE, 3));
    assertEquals(CommandResult.Outcome.REFUSED, outcome());
    assertTrue(write(3, 11, 4));
    assertEquals(CommandResult.Outcome.REFUSED, outcome());
    assertTrue(write(4, 16, 3));
    assertEquals(CommandResult.Outcome.REFUSED, outcome());
    assertTrue(write(5, 17, 99));
    assertEquals(CommandResult.Outcome.REFUSED, outcome());
  }

  @Test
  void aCallAndASilenceWaitForTheirScanLikeEveryOther() {
    assertTrue(write(1, 16, 0));
    assertEquals(CommandResult.Outcome.WAITING, outcome());
    assertTrue(write(2, STOP, 0));
    CommandDesk other = new CommandDesk(tray);
    assertTrue(other.write(new CommandDesk.Written(1, 17, 103, 0, 0)));
    assertEquals(CommandResult.Outcome.WAITING, other.result().outcome());
  }

  /** A controller that remembers what was asked and answers when a test says so. */
  private static final class Waiting implements StationTray {
    CompletableFuture<Answer> answer = new CompletableFuture<>();
    String asked = "";
    boolean atTray = true;
    private final Mailbox mailbox = new Mailbox();

    @Override
    public @Nullable Snapshot latest() {
      return null;
    }

    @Override
    public Mailbox mailbox() {
      return mailbox;
    }

    @Override
    public EventBox events() {
      throw new UnsupportedOperationException();
    }

    @Override
    public HostPulse host() {
      throw new UnsupportedOperationException();
    }

    @Override
    public UpkeepDesk upkeep() {
      throw new UnsupportedOperationException();
    }

    @Override
    public CalibrationDesk calibrations() {
      throw new UnsupportedOperationException();
    }

    @Override
    public Optional<LearnedTray> learned() {
      return Optional.empty();
    }

    @Override
    public ScanTiming timing() {
      throw new UnsupportedOperationException();
    }

    @Override
    public boolean simulated() {
      return true;
    }

    @Override
    public boolean hostAtTray() {
      return atTray;
    }

    @Override
    public CompletableFuture<Answer> calibrateIce(ProbeRole role) {
      asked = "ice " + role;
      return answer;
    }

    @Override
    public CompletableFuture<Answer> calibrateReference(
        ProbeRole role, double celsius, double statedK) {
      asked = "reference " + role + " " + celsius + " " + statedK;
      return answer;
    }

    @Override
    public CompletableFuture<Answer> forgetCalibration(ProbeRole role) {
      asked = "forget " + role;
      return answer;
    }

    @Override
    public CompletableFuture<Answer> calibrateTray(double litres) {
      asked = "tray " + litres;
      return answer;
    }

    @Override
    public CompletableFuture<Answer> upkeepDone(UpkeepItem item) {
      asked = "upkeep " + item;
      return answer;
    }
  }
}
