package trayward.controller.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * Bath and plate under full heat in blocks of ten seconds, once the plate has come to follow. A
 * value.
 *
 * @param onS time heat has been on without a pause, s
 * @param open the block that is being filled
 * @param blocks the full ones, oldest first
 */
record HeatTrail(double onS, Block open, List<Block> blocks) {

  static final HeatTrail START = new HeatTrail(0, Block.EMPTY, List.of());

  /** Ten readings of a probe read each second: noise of 0.05 K becomes 0.02 K. */
  private static final double BLOCK_S = 10;

  /** A plate of 61 s has come two thirds of its way; whether it follows is looked at besides. */
  private static final double SETTLE_S = 50;

  /** Where no plate is seen: the slowest, 1800 J/K over 12 W/K, has come two thirds of its way. */
  private static final double SETTLE_BLIND_S = 180;

  /** With the settling before it, two minutes of steady heat. */
  private static final int LEAST_BLOCKS = 7;

  /** Ten minutes: three litres on a weak heater rise 3 K in less. */
  private static final int MOST_BLOCKS = 64;

  /** Twenty times the doubt about a rise. */
  private static final double RISE_K = 3;

  /** Pours, sheets and a tray that runs out bend the course; falling net heat bends it less. */
  private static final double BENT_SHARE = 0.08;

  private static final double BENT_K = 0.12;

  /** What the plate may rise more or less than the bath and still count as following it. */
  private static final double FOLLOWS = 0.3;

  /** Losses are known to half and double: above this share of the heat they hide the liquid. */
  private static final double LOSS_SHARE = 0.4;

  /**
   * Means and sums of a block.
   *
   * @param timeS length so far, s
   * @param bathKs integral of the bath reading, K s
   * @param plateKs integral of the plate reading, K s; NaN where none is seen
   * @param dryJ believed dry losses over it, J
   * @param evaporationJ believed evaporative loss over it, J
   */
  record Block(double timeS, double bathKs, double plateKs, double dryJ, double evaporationJ) {

    static final Block EMPTY = new Block(0, 0, 0, 0, 0);

    Block next(ThermalInput in, TrayModel model, RoomModel room) {
      double dt = in.elapsedS();
      double bath = in.bath().celsius();
      double plate = in.plate().known() ? in.plate().celsius() : bath;
      double dryW =
          model.bathLossWPerK() * (bath - room.airC())
              + model.plateLossWPerK() * (plate - room.airC());
      return new Block(
          timeS + dt,
          bathKs + bath * dt,
          plateKs + in.plate().celsius() * dt,
          dryJ + dryW * dt,
          evaporationJ + model.evaporationW(bath, room) * dt);
    }

    double bathC() {
      return bathKs / timeS;
    }

    double plateC() {
      return plateKs / timeS;
    }
  }

  HeatTrail next(ThermalInput in, TrayModel model, RoomModel room) {
    if (!in.heatCommanded() || !in.bath().known()) {
      return START;
    }
    double on = onS + in.elapsedS();
    double settleS = in.plate().known() ? SETTLE_S : SETTLE_BLIND_S;
    if (on < settleS) {
      return new HeatTrail(on, Block.EMPTY, List.of());
    }
    Block now = open.next(in, model, room);
    if (now.timeS() < BLOCK_S) {
      return new HeatTrail(on, now, blocks);
    }
    List<Block> all = new ArrayList<>(blocks);
    if (all.size() == MOST_BLOCKS) {
      all.remove(0);
    }
    all.add(now);
    return new HeatTrail(on, Block.EMPTY, List.copyOf(all));
  }

  /** The stretch that ends now; null where the rise is still too small, bent, or hidden. */
  @Nullable HeatStretch stretch(TrayModel model) {
    if (open.timeS() > 0 || blocks.size() < LEAST_BLOCKS) {
      return null;
    }
    int last = blocks.size() - 1;
    int first = last - LEAST_BLOCKS + 1;
    while (first > 0 && rise(first, last) < RISE_K) {
      first--;
    }
    double bathK = rise(first, last);
    if (bathK < RISE_K || bent(first, last)) {
      return null;
    }
    double plateK = blocks.get(last).plateC() - blocks.get(first).plateC();
    double rise = Double.isNaN(plateK) ? bathK : plateK;
    double heatJ = model.heaterW() * between(first, last, Block::timeS);
    double dryJ = between(first, last, Block::dryJ);
    double evaporationJ = between(first, last, Block::evaporationJ);
    boolean follows = Math.abs(rise - bathK) <= FOLLOWS * bathK;
    return follows && dryJ + evaporationJ <= LOSS_SHARE * heatJ
        ? new HeatStretch(heatJ, dryJ, evaporationJ, model.plateJPerK() * rise, bathK)
        : null;
  }

  private double rise(int first, int last) {
    return blocks.get(last).bathC() - blocks.get(first).bathC();
  }

  /** Sum from the middle of the first block to the middle of the last. */
  private double between(int first, int last, ToDoubleFunction<Block> of) {
    double sum = (of.applyAsDouble(blocks.get(first)) + of.applyAsDouble(blocks.get(last))) / 2;
    for (int i = first + 1; i < last; i++) {
      sum += of.applyAsDouble(blocks.get(i));
    }
    return sum;
  }

  /** Whether some block stands off the straight line between the ends. */
  private boolean bent(int first, int last) {
    double from = blocks.get(first).bathC();
    double rise = rise(first, last);
    for (int i = first + 1; i < last; i++) {
      double line = from + rise * (i - first) / (last - first);
      if (Math.abs(blocks.get(i).bathC() - line) > BENT_SHARE * rise + BENT_K) {
        return true;
      }
    }
    return false;
  }
}
