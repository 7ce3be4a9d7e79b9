package trayward.controller.port;

/**
 * Every output the controller drives. Only {@code scan} calls them.
 *
 * @param heaterRelay the cycling relay
 * @param safetyRelay the rarely switched relay in series with it
 * @param watchdogLine pulse line that holds the safety relay's own hardware in
 * @param fan the extraction fan
 * @param buzzer the sounder beside the tray
 * @param lamp the red lamp beside it; where none is wired, writing it does nothing
 */
public record OutputLines(
    OutputLine heaterRelay,
    OutputLine safetyRelay,
    OutputLine watchdogLine,
    OutputLine fan,
    OutputLine buzzer,
    OutputLine lamp) {}
