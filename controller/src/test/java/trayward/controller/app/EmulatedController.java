package trayward.controller.app;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.ExecutionException;
import trayward.controller.safety.Request;
import trayward.controller.scan.Answer;
import trayward.controller.scan.Snapshot;

/**
 * The whole controller in the emulated computer, from its configuration to its lines. It is told
 * {@code start} or {@code state} on standard input, answers in one line, and closes in order when
 * its input ends.
 */
public final class EmulatedController {

  private EmulatedController() {}

  /** Runs until its input ends. */
  public static void main(String[] args)
      throws IOException, InterruptedException, ExecutionException {
    try (ControllerRuntime controller =
        new ControllerRuntime(
            Settings.read(Path.of(args[0])),
            System::nanoTime,
            () -> 0,
            failure -> failure.printStackTrace())) {
      controller.start();
      System.out.println("running");
      BufferedReader in =
          new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        System.out.println(answer(controller, line));
      }
    } catch (ConfigRefused e) {
      System.err.println(e.line());
      System.exit(2);
    }
    System.exit(0);
  }

  private static String answer(ControllerRuntime controller, String line)
      throws InterruptedException, ExecutionException {
    if (line.equals("start")) {
      // What a busy computer may have tripped before.
      controller.mailbox().ask(Request.ACKNOWLEDGE, true).get();
      controller.mailbox().ask(Request.RESET, true).get();
      Answer answer = controller.mailbox().start(true, true).get();
      return answer.accepted() ? "started" : answer.reason();
    }
    Snapshot now = controller.latest();
    return now == null
        ? "nothing"
        : now.state()
            + now.firstOut().map(cause -> " " + cause).orElse("")
            + " rpm="
            + Math.round(now.fanRpm())
            + " withheld="
            + now.withheld();
  }
}
