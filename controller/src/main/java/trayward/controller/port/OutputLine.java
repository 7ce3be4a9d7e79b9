package trayward.controller.port;

/** One digital output. The adapter turns polarity round; {@code true} always means active. */
@FunctionalInterface
public interface OutputLine {

  /** Drives the line; a failure is an exception, which ends the scan with all outputs off. */
  void write(boolean active);
}
