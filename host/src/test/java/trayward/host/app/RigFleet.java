package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Many benches with a real program at each, brought to full heat side by side: the way there takes
 * a quarter of a minute for one or for all. One thread.
 */
final class RigFleet implements AutoCloseable {

  /** Far above what the bath reaches while a fleet lives, so that heat is on without a pause. */
  private static final double SET_C = 48;

  /** Programs that start at once: more would make the scans of those that run late. */
  private static final int AT_ONCE = 2;

  private static final double HEAT_WITHIN_S = 100;
  private static final double LOOK_S = 0.6;

  /** With the first about ten seconds. */
  private static final int MORE_LOOKS = 15;

  /** A bench with the program at it. */
  record Place(RigBench bench, RunningTrayward program) {}

  private final Map<String, Place> places = new LinkedHashMap<>();
  private final Process rig;

  private RigFleet(Process rig) {
    this.rig = rig;
  }

  /**
   * Starts a fleet and waits until the rig sees heat at every bench.
   *
   * @param folder where their folders come
   * @param machines options of each program's Java machine, by a name for the bench
   */
  static RigFleet heating(Path folder, Map<String, List<String>> machines) throws Exception {
    Map<String, RigBench> benches = new LinkedHashMap<>();
    Map<String, Path> configs = new LinkedHashMap<>();
    for (String name : machines.keySet()) {
      RigBench bench = new RigBench(Files.createDirectories(folder.resolve(name)));
      benches.put(name, bench);
      configs.put(name, bench.config(SET_C));
    }
    RigFleet fleet = new RigFleet(RigBench.rig(List.copyOf(benches.values())));
    try {
      fleet.start(machines, benches, configs);
      return fleet;
    } catch (Exception | AssertionError e) {
      fleet.close();
      throw e;
    }
  }

  private void start(
      Map<String, List<String>> machines, Map<String, RigBench> benches, Map<String, Path> configs)
      throws Exception {
    ExecutorService starters = Executors.newFixedThreadPool(AT_ONCE);
    try {
      Map<String, Future<RunningTrayward>> programs = new LinkedHashMap<>();
      machines.forEach(
          (name, machine) ->
              programs.put(name, starters.submit(() -> program(name, machine, configs))));
      for (Map.Entry<String, Future<RunningTrayward>> each : programs.entrySet()) {
        RigBench bench = benches.get(each.getKey());
        if (bench != null) {
          places.put(each.getKey(), new Place(bench, each.getValue().get()));
        }
      }
    } finally {
      starters.shutdown();
    }
    for (Place place : places.values()) {
      place.program().await(s -> s.path("bath_c").isNumber());
      assertEquals(200, place.program().send("POST", "/api/commands/start", "").statusCode());
    }
    for (Place place : places.values()) {
      Outside.await(place.bench(), "heat_w_seen_by_the_rig", "200", HEAT_WITHIN_S);
    }
  }

  private static RunningTrayward program(
      String name, List<String> machine, Map<String, Path> configs) throws IOException {
    List<String> options = new ArrayList<>(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
    options.addAll(machine);
    Path config = configs.get(name);
    if (config == null) {
      throw new IllegalStateException(name);
    }
    return RunningTrayward.start(config, options.toArray(new String[0]));
  }

  /** The bench of a name; it was seen to heat, and is seen once more. */
  Place at(String name) {
    Place place = places.get(name);
    if (place == null) {
      throw new IllegalStateException("no bench " + name);
    }
    Outside seen = Outside.watch(place.bench(), LOOK_S);
    for (int more = 0; more < MORE_LOOKS && !seen.heats(LOOK_S); more++) {
      seen = Outside.watch(place.bench(), LOOK_S); // a busy computer: wait for its scans
    }
    seen.assertHeats(LOOK_S);
    return place;
  }

  @Override
  public void close() {
    places.values().forEach(place -> place.program().close());
    rig.destroyForcibly();
  }
}
