package trayward.controller.gpio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;

import com.pi4j.context.Context;
import com.pi4j.exception.ShutdownException;
import com.pi4j.registry.Registry;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;

/** The thread that hears an input waits until the input is made. */
class SureInputsTest {

  private final Context context = mock(Context.class);
  private final CountDownLatch made = new CountDownLatch(1);
  private final Context holding = SureInputs.holding(context, made);

  @Test
  void aTaskWaitsUntilTheInputIsMadeAndThenRuns() throws InterruptedException {
    AtomicBoolean ran = new AtomicBoolean();
    CompletableFuture<Thread> started = new CompletableFuture<>();
    when(context.submitTask(any()))
        .thenAnswer(
            call -> {
              Thread thread = new Thread(call.<Runnable>getArgument(0));
              thread.start();
              started.complete(thread);
              return started;
            });
    assertSame(started, holding.submitTask(() -> ran.set(true)));
    Thread thread = started.join();
    while (thread.getState() == Thread.State.NEW || thread.getState() == Thread.State.RUNNABLE) {
      LockSupport.parkNanos(1_000_000);
    }
    assertEquals(Thread.State.WAITING, thread.getState());
    assertFalse(ran.get());
    made.countDown();
    thread.join();
    assertTrue(ran.get());
  }

  @Test
  void everythingElseIsTheContextItself() {
    Registry registry = mock(Registry.class);
    when(context.registry()).thenReturn(registry);
    assertSame(registry, holding.registry());
    ShutdownException failure = new ShutdownException("no");
    when(context.shutdown()).thenThrow(failure);
    assertSame(failure, assertThrows(ShutdownException.class, holding::shutdown));
  }
}
