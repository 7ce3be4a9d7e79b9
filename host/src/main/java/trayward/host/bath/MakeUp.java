package trayward.host.bath;

import java.util.ArrayList;
import java.util.List;

/**
 * A bath made up from concentrates and water to a volume. Immutable.
 *
 * @param dilution parts by volume
 * @param millilitres all together, mL, above 0
 */
public record MakeUp(Dilution dilution, double millilitres) {

  /** Refuses what is no volume. */
  public MakeUp {
    if (!(millilitres > 0) || Double.isInfinite(millilitres)) {
      throw new IllegalArgumentException("no volume: " + millilitres);
    }
  }

  /** How much of each concentrate, mL, in the order of the dilution. */
  public List<Double> concentratesMl() {
    List<Double> each = new ArrayList<>();
    for (int i = 0; i < dilution.concentrates().size(); i++) {
      each.add(dilution.share(i) * millilitres);
    }
    return List.copyOf(each);
  }

  /** How much water where nothing else takes its place, mL. */
  public double waterMl() {
    return millilitres - concentratesMl().stream().mapToDouble(Double::doubleValue).sum();
  }
}
