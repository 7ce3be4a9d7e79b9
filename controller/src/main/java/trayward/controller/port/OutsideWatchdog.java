package trayward.controller.port;

import java.io.IOException;

/**
 * Something outside of the program that ends it, or restarts its computer, once it hears of no more
 * scans (SR-18). It stands beside the pulse line and never in its place. One thread at a time.
 */
public interface OutsideWatchdog {

  /** What it is, for the log. */
  String name();

  /** How often it wants to hear, ms. */
  long periodMs();

  /**
   * Told of a scan that came to its end, and that no earlier call told of.
   *
   * @param status the state of the tray in a few words, one line
   * @throws IOException where it could not be told; it will bite if this goes on
   */
  void feed(String status) throws IOException;

  /**
   * Told once, at the end.
   *
   * @param orderly the last scan ended as asked and heat is off; else it is left to bite
   * @throws IOException where it could not be told
   */
  void end(boolean orderly) throws IOException;
}
