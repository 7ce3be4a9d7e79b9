package trayward.controller.gpio;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A Java program beside this one that is told things line by line and answers likewise. */
final class Told implements AutoCloseable {

  private final Process process;
  private final PrintStream to;
  private final BufferedReader from;

  private Told(Process process) {
    this.process = process;
    this.to = new PrintStream(process.getOutputStream(), true, StandardCharsets.UTF_8);
    this.from = process.inputReader(StandardCharsets.UTF_8);
  }

  /** Starts a Java program as this one was started; what it says of errors goes to a file. */
  static Told java(Path err, String... words) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-XX:TieredStopAtLevel=1");
    command.add("-XX:+UseSerialGC");
    command.addAll(List.of(words));
    return new Told(
        new ProcessBuilder(command)
            .redirectError(ProcessBuilder.Redirect.to(new File(err.toString())))
            .start());
  }

  static Told main(Path err, String mainClass, String... words) throws IOException {
    List<String> all = new ArrayList<>(List.of("-cp", System.getProperty("java.class.path")));
    all.add(mainClass);
    all.addAll(List.of(words));
    return java(err, all.toArray(new String[0]));
  }

  /** The next line it says; "ended" where it has ended. */
  String hear() throws IOException {
    String line = from.readLine();
    return line == null ? "ended" : line;
  }

  /** Reads on until a line begins so; gives that line, or "ended". */
  String hear(String beginning) throws IOException {
    String line = hear();
    while (!line.startsWith(beginning) && !line.equals("ended")) {
      line = hear();
    }
    return line;
  }

  String ask(String words) throws IOException {
    to.println(words);
    return hear();
  }

  /** Signal 9: it gets to say nothing more. */
  int kill() throws InterruptedException {
    process.destroyForcibly();
    return exit();
  }

  /** Signal 15: it may close in order. */
  int terminate() throws InterruptedException {
    process.destroy();
    return exit();
  }

  /** Waits for its end; -1 where it does not come within ten minutes. */
  int exit() throws InterruptedException {
    return process.waitFor(10, TimeUnit.MINUTES) ? process.exitValue() : -1;
  }

  /** Its input ends. */
  @Override
  public void close() {
    to.close();
  }
}
