package trayward.host.bath;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Concentrates and water by volume, written 1+7 or, with two parts, 1+1+20. Immutable.
 *
 * @param concentrates parts of each concentrate, at least one, each above 0
 * @param water parts of water, 0 or more
 */
public record Dilution(List<Double> concentrates, double water) {

  /** Longest text read: three numbers with some digits. */
  private static final int MAX_TEXT = 40;

  /** Developers come in one part or in two; a third is a restrainer in the same breath. */
  private static final int MAX_PARTS = 4;

  private static final String ACCEPTED = "parts by volume joined by +, such as 1+7 or 1+1+20";

  /** What is taken, and why a colon is not. */
  public static final String NO_COLON =
      ACCEPTED + "; a colon is read as 1 and 7 by some and as 1 in 7 by others";

  /** Copies the parts. */
  public Dilution {
    concentrates = List.copyOf(concentrates);
    if (concentrates.isEmpty() || concentrates.stream().anyMatch(p -> !(p > 0)) || !(water >= 0)) {
      throw new IllegalArgumentException(ACCEPTED);
    }
  }

  /** Reads one; 1:7 is refused, because some read it as one in seven and some as one and seven. */
  public static Checked<Dilution> read(String field, String text) {
    if (text.contains(":")) {
      return new Checked.Bad<>(new Problem(field, text, NO_COLON));
    }
    String[] parts = text.trim().split("\\+", -1);
    if (text.length() > MAX_TEXT || parts.length < 2 || parts.length > MAX_PARTS) {
      return new Checked.Bad<>(new Problem(field, text, ACCEPTED));
    }
    List<Double> numbers = new ArrayList<>();
    for (String part : parts) {
      double number = number(part.trim());
      if (!(number >= 0) || number > 1000) {
        return new Checked.Bad<>(new Problem(field, text, ACCEPTED));
      }
      numbers.add(number);
    }
    double water = numbers.remove(numbers.size() - 1);
    return numbers.stream().allMatch(n -> n > 0)
        ? new Checked.Good<>(new Dilution(numbers, water))
        : new Checked.Bad<>(new Problem(field, text, ACCEPTED));
  }

  private static double number(String text) {
    return text.matches("[0-9]{1,4}(\\.[0-9]{1,3})?") ? Double.parseDouble(text) : Double.NaN;
  }

  /** Share of the whole that a concentrate is, 0 to 1; the first is number 0. */
  public double share(int concentrate) {
    return concentrates.get(concentrate) / parts();
  }

  private double parts() {
    return water + concentrates.stream().mapToDouble(Double::doubleValue).sum();
  }

  /** As it is written. */
  public String words() {
    StringBuilder out = new StringBuilder();
    for (double part : concentrates) {
      out.append(plain(part)).append('+');
    }
    return out.append(plain(water)).toString();
  }

  private static String plain(double number) {
    return number == Math.rint(number)
        ? String.format(Locale.ROOT, "%.0f", number)
        : Double.toString(number);
  }
}
