package trayward.host.link;

import java.util.List;

/**
 * The controller as the host last saw it. Temperatures are NaN where no valid reading stands.
 *
 * @param scan scan counter
 * @param uptimeS time since power-up, s, monotonic
 * @param state name of the interlock's state
 * @param stateS how long it has been there, s
 * @param remainingS time left of purge or after-run, s; negative where none runs
 * @param bathC bath, °C
 * @param secondBathC second bath probe, °C
 * @param plateC plate, °C
 * @param bathClass class of the bath reading
 * @param setC set temperature, °C
 * @param duty duty demanded, 0 to 1
 * @param heaterOn heat commanded: both relays closed
 * @param safetyRelay safety relay commanded closed
 * @param fanCommanded fan commanded on
 * @param fanProven the fan counts as running
 * @param fanRpm tachometer, 1/min
 * @param airflow airflow switch closed
 * @param firstOut first-out cause; empty where none is latched
 * @param alarms latched alarms, first-out first, then warnings
 * @param withheld names of what withholds heat
 * @param withheldWords the same in words
 * @param presenceDueS time until presence is due, s
 * @param storeWritable the controller's own record can be written
 * @param heaterClosings closings of the cycling relay since it was fitted
 * @param safetyClosings closings of the safety relay
 * @param level what is thought of the liquid in the tray
 * @param uncertainty how far the readings may be from the truth
 * @param tray what is known of the tray
 */
public record TrayStatus(
    long scan,
    double uptimeS,
    String state,
    double stateS,
    double remainingS,
    double bathC,
    double secondBathC,
    double plateC,
    String bathClass,
    double setC,
    double duty,
    boolean heaterOn,
    boolean safetyRelay,
    boolean fanCommanded,
    boolean fanProven,
    double fanRpm,
    boolean airflow,
    String firstOut,
    List<AlarmView> alarms,
    List<String> withheld,
    List<String> withheldWords,
    double presenceDueS,
    boolean storeWritable,
    long heaterClosings,
    long safetyClosings,
    LevelView level,
    UncertaintyView uncertainty,
    TrayKnownView tray) {}
