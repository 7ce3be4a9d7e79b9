package trayward.host.report;

/**
 * One row of a rehearsal's {@code trace.csv}, in the order and units of its columns. Readings are
 * NaN where not valid.
 *
 * @param permitted heat was permitted in the scan: measured on, not written
 */
public record TraceRow(
    double tS,
    double bathTrueC,
    double plateTrueC,
    double bathC,
    double secondBathC,
    double plateC,
    double setC,
    double duty,
    boolean heaterCommand,
    boolean heaterRelay,
    boolean safetyRelay,
    boolean watchdogLine,
    double heatW,
    boolean fanCommand,
    double fanRpm,
    double flowTrueM3PerH,
    boolean airflow,
    boolean fanProven,
    String state,
    String firstOut,
    double liquidL,
    double evaporatedMl,
    boolean permitted) {}
