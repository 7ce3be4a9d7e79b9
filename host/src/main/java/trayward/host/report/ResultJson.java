package trayward.host.report;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;

/** Writes {@code result.json} of a rehearsal. Stateless. */
public final class ResultJson {

  private static final ObjectMapper JSON = new ObjectMapper();

  private ResultJson() {}

  /**
   * A trip.
   *
   * @param cause its name
   * @param tS when it latched, s
   */
  public record Trip(String cause, double tS) {}

  /**
   * What the meter does not know.
   *
   * @param trips in order of time
   * @param energyWh electrical energy, Wh
   * @param evaporatedMl water evaporated, mL
   * @param relayOperations closings and openings of the heater relay
   * @param wallS time the rehearsal took, s
   * @param plantS time it covered, s
   */
  public record Totals(
      List<Trip> trips,
      double energyWh,
      double evaporatedMl,
      long relayOperations,
      double wallS,
      double plantS) {}

  /** Writes the file. */
  public static void write(Path file, ResultMeter meter, Totals totals) throws IOException {
    Files.writeString(
        file, JSON.writerWithDefaultPrettyPrinter().writeValueAsString(node(meter, totals)) + "\n");
  }

  private static ObjectNode node(ResultMeter meter, Totals totals) {
    ObjectNode node = JSON.createObjectNode();
    put(node, "heat_up_s", meter.heatUpS());
    put(node, "time_optimal_s", meter.timeOptimalS());
    put(node, "heat_up_ratio", ratio(meter.heatUpS(), meter.timeOptimalS()));
    put(node, "overshoot_k", meter.overshootK());
    node.put("ripple_pp_k", rounded(meter.ripplePpK()));
    node.put("standing_error_k", rounded(meter.standingErrorK()));
    ArrayNode recoveries = node.putArray("recoveries");
    for (ResultMeter.Recovery r : meter.recoveries()) {
      ObjectNode one = recoveries.addObject();
      one.put("t_s", rounded(r.tS()));
      one.put("do", r.word());
      put(one, "settle_s", r.settleS());
      put(one, "time_optimal_s", r.boundS());
      put(one, "ratio", ratio(r.settleS(), r.boundS()));
      put(one, "overshoot_k", r.overshootK());
    }
    ArrayNode trips = node.putArray("trips");
    for (Trip trip : totals.trips()) {
      trips.addObject().put("cause", trip.cause()).put("t_s", rounded(trip.tS()));
    }
    node.put("energy_wh", rounded(totals.energyWh()));
    node.put("evaporated_ml", rounded(totals.evaporatedMl()));
    node.put("max_bath_c", rounded(meter.maxBathC()));
    node.put("max_plate_c", rounded(meter.maxPlateC()));
    node.put("relay_operations", totals.relayOperations());
    node.put("wall_s", rounded(totals.wallS()));
    node.put("speedup", rounded(totals.plantS() / totals.wallS()));
    return node;
  }

  private static OptionalDouble ratio(OptionalDouble measured, OptionalDouble bound) {
    return measured.isPresent() && bound.isPresent() && bound.getAsDouble() > 0
        ? OptionalDouble.of(measured.getAsDouble() / bound.getAsDouble())
        : OptionalDouble.empty();
  }

  private static void put(ObjectNode node, String key, OptionalDouble value) {
    if (value.isPresent()) {
      node.put(key, rounded(value.getAsDouble()));
    } else {
      node.putNull(key);
    }
  }

  /** Four decimals are below what any sensor resolves. */
  private static double rounded(double value) {
    return Math.round(value * 1e4) / 1e4;
  }
}
