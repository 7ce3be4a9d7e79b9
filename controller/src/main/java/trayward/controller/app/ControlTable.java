package trayward.controller.app;

/**
 * The {@code [control]} table.
 *
 * @param setC set temperature at power-up, °C
 * @param regulator which regulator: {@code auto} or {@code pid}
 * @param cycleS cycle of the heater relay, s
 * @param minPulseS shortest pulse or pause of it, s
 * @param attended rehearsals only: presence is renewed every ten minutes
 * @param hostRequired heat needs a living host
 */
public record ControlTable(
    double setC,
    String regulator,
    double cycleS,
    double minPulseS,
    boolean attended,
    boolean hostRequired) {}
