package trayward.host.bath;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Molar masses from a formula. Pure. Atomic weights are the conventional values of the Commission
 * on Isotopic Abundances and Atomic Weights, 2021.
 */
public final class MolarMass {

  private static final Map<String, Double> ATOMS =
      Map.ofEntries(
          Map.entry("H", 1.0080),
          Map.entry("C", 12.011),
          Map.entry("O", 15.999),
          Map.entry("Na", 22.98976928),
          Map.entry("S", 32.06),
          Map.entry("Cl", 35.45),
          Map.entry("K", 39.0983),
          Map.entry("Br", 79.904),
          Map.entry("Ag", 107.8682));

  private static final Pattern ATOM = Pattern.compile("([A-Z][a-z]?)([0-9]*)");

  /** Potassium bromide, g/mol. */
  public static final double KBR = of("KBr");

  /** Silver, g/mol. */
  public static final double AG = of("Ag");

  /** Hydroquinone, g/mol. */
  public static final double HYDROQUINONE = of("C6H6O2");

  private MolarMass() {}

  /**
   * Molar mass of a formula, g/mol, such as {@code Na2SO3} or {@code Na2S2O3.5H2O}.
   *
   * @throws IllegalArgumentException where it is no formula of the atoms known here
   */
  public static double of(String formula) {
    double sum = 0;
    for (String group : formula.split("\\.", -1)) {
      Matcher count = Pattern.compile("^[0-9]+").matcher(group);
      boolean counted = count.find();
      String rest = counted ? group.substring(count.end()) : group;
      sum += (counted ? Integer.parseInt(count.group()) : 1) * group(rest, formula);
    }
    return sum;
  }

  private static double group(String group, String formula) {
    double sum = 0;
    int read = 0;
    Matcher atoms = ATOM.matcher(group);
    while (atoms.find() && atoms.start() == read) {
      Double weight = ATOMS.get(part(atoms, 1));
      if (weight == null) {
        throw new IllegalArgumentException("no atom of " + formula + " is " + atoms.group());
      }
      String many = part(atoms, 2);
      sum += weight * (many.isEmpty() ? 1 : Integer.parseInt(many));
      read = atoms.end();
    }
    if (read == 0 || read != group.length()) {
      throw new IllegalArgumentException("no formula: " + formula);
    }
    return sum;
  }

  private static String part(Matcher matcher, int group) {
    String found = matcher.group(group);
    return found == null ? "" : found;
  }
}
