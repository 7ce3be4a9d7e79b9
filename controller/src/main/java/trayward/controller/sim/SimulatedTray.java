package trayward.controller.sim;

import java.util.Arrays;
import trayward.controller.port.LineReader;
import trayward.controller.port.LineReadings;
import trayward.controller.port.OutputLines;
import trayward.controller.port.ProbeReader;
import trayward.controller.port.ProbeRole;
import trayward.controller.port.RawReading;

/**
 * A whole tray with its fan, relays, probes and room behind the ports of the controller. It
 * advances to whatever time it is asked about, in steps of 0.1 s from its origin. Mutable; one
 * thread.
 */
public final class SimulatedTray implements LineReader, ProbeReader {

  /** Step of the simulation, s: the scan period. */
  public static final double STEP_S = 0.1;

  private static final long STEP_NANOS = 100_000_000L;

  /**
   * Longest gap caught up with, steps: an hour; a computer that slept longer wakes to a cold bath.
   */
  private static final long MAX_CATCH_UP = 36_000;

  private final PlantParameters parameters;
  private final Plant plant;
  private final SimFan fan;
  private final SimRelays relays = new SimRelays();
  private final SimProbe[] probes;
  private final boolean[] fitted;
  // What was told of each probe last, and the reading that it was told of.
  private final RawReading[] told;
  private final RawReading[] toldOf;
  private final long originNanos;
  private final OutputLines outputs;
  private long steps;
  private boolean fanCoil;
  private boolean powered = true;
  private boolean stopPressed;

  /**
   * A tray at rest.
   *
   * @param parameters the truth
   * @param bath the bath probe
   * @param second the second bath probe
   * @param plateProbe the plate probe
   * @param seed seed of all noise
   * @param originNanos monotonic time of its beginning
   */
  public SimulatedTray(
      PlantParameters parameters,
      ProbeParameters bath,
      ProbeParameters second,
      ProbeParameters plateProbe,
      long seed,
      long originNanos) {
    this.parameters = parameters;
    this.plant = new Plant(parameters);
    this.fan = new SimFan(parameters);
    this.originNanos = originNanos;
    ProbeParameters[] all = {bath, second, plateProbe};
    this.probes = new SimProbe[all.length];
    this.fitted = new boolean[all.length];
    this.told = new RawReading[all.length];
    this.toldOf = new RawReading[all.length];
    for (int i = 0; i < all.length; i++) {
      probes[i] = new SimProbe(all[i], parameters.startC(), seed * 31 + i);
      fitted[i] = all[i].present();
      tell(i);
    }
    this.outputs =
        new OutputLines(
            relays::heaterCoil,
            relays::safetyCoil,
            level -> relays.pulse(level, nowS()),
            on -> fanCoil = on,
            on -> {},
            on -> {});
  }

  /** The lines to drive it by. */
  public OutputLines outputs() {
    return outputs;
  }

  @Override
  public LineReadings read(long nowNanos) {
    advanceTo(nowNanos);
    return new LineReadings(true, fan.airflow(), fan.readRpm(), !stopPressed, false, false, false);
  }

  @Override
  public RawReading latest(ProbeRole role, long nowNanos) {
    int index = index(role);
    if (!fitted[index]) {
      return RawReading.failed(RawReading.Kind.ABSENT, nowNanos);
    }
    if (!probes[index].reading().equals(toldOf[index])) {
      tell(index);
    }
    return told[index];
  }

  private void tell(int index) {
    RawReading raw = probes[index].reading();
    told[index] = new RawReading(raw.kind(), raw.celsius(), originNanos + raw.takenNanos());
    toldOf[index] = raw;
  }

  static int index(ProbeRole role) {
    return switch (role) {
      case BATH -> 0;
      case SECOND_BATH -> 1;
      case PLATE -> 2;
    };
  }

  /** Advances the truth to {@code nowNanos}, whole steps only. */
  public void advanceTo(long nowNanos) {
    long target = (nowNanos - originNanos) / STEP_NANOS;
    if (target - steps > MAX_CATCH_UP) {
      steps = target - MAX_CATCH_UP;
    }
    while (steps < target) {
      step();
    }
  }

  private void step() {
    double fromS = steps * STEP_S;
    double toS = (steps + 1) * STEP_S;
    if (!powered) {
      relays.unpowered();
    }
    fan.advance(STEP_S, fanCoil && powered);
    plant.advance(STEP_S, heatW());
    for (int i = 0; i < probes.length; i++) {
      double place = i == 2 ? plant.plateC() : plant.bathC();
      probes[i].advance(fromS, toS, place, parameters.airC());
    }
    steps++;
  }

  private double nowS() {
    return steps * STEP_S;
  }

  /** True heater power now, W. */
  public double heatW() {
    return powered ? relays.heatW(parameters.heaterW(), nowS()) : 0;
  }

  /** The heater relay's contact. */
  public boolean heaterContact() {
    return relays.heaterContact();
  }

  /** The safety relay's contact. */
  public boolean safetyContact() {
    return relays.safetyContact(nowS());
  }

  /** Level of the watchdog line. */
  public boolean watchdogLine() {
    return relays.pulse();
  }

  /** True flow, m³/h. */
  public double flowM3PerH() {
    return fan.flowM3PerH();
  }

  /** The tachometer as read, 1/min. */
  public double readRpm() {
    return fan.readRpm();
  }

  /** The true switch, whatever its wire says. */
  public boolean trueAirflow() {
    return fan.flowM3PerH() > parameters.flowM3PerH() / 2;
  }

  /** Closings and openings of the heater relay so far. */
  public long relayOperations() {
    return relays.operations();
  }

  /** The thermal truth, also for pours, sheets and covers. */
  public Plant plant() {
    return plant;
  }

  /** Begins or ends a fault. */
  public void fault(SimFault kind, boolean on, double value) {
    SimFaults.apply(kind, on, value, this, fan, relays, plant, probes);
  }

  void powered(boolean on) {
    powered = on;
    if (!on) {
      fanCoil = false;
      relays.unpowered();
    }
  }

  /** Presses or releases the stop button. */
  public void pressStop(boolean pressed) {
    stopPressed = pressed;
  }

  @Override
  public String toString() {
    return "SimulatedTray" + Arrays.asList(nowS(), plant.bathC(), plant.plateC());
  }
}
