package trayward.host.bath;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Everything that can be poured into a bath, by name: water, stock solutions of bromide and sulfite
 * at any strength, and what stands on the person's shelf. Immutable.
 */
public final class Bottles {

  /** A top-up is water: what vapour took. */
  private static final List<String> WATER = List.of("water", "top-up");

  /** Strongest stock: both salts dissolve to some 40 % and 25 % weight in volume when cold. */
  private static final double PERCENT_MAX = 40;

  private static final Pattern STOCK =
      Pattern.compile(
          "(?:(?:potassium )?(bromide)|(?:sodium )?(sulfite)) ([0-9]{1,2}(?:\\.[0-9]{1,2})?) ?%");

  private final Map<String, Solution> shelf = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);

  /** Water, stock solutions and these. */
  public Bottles(List<Solution> onTheShelf) {
    onTheShelf.forEach(s -> shelf.put(s.name().trim(), s));
  }

  /** What this name stands for, at a dilution or, where that is empty, as it is. */
  public Checked<Solution> find(String field, String name, String dilution) {
    Optional<Solution> found = find(name.trim());
    if (found.isEmpty()) {
      return new Checked.Bad<>(new Problem(field, name, accepted()));
    }
    if (dilution.isEmpty()) {
      return new Checked.Good<>(found.get());
    }
    return Dilution.read("dilution", dilution)
        .then(d -> new Checked.Good<>(found.get().diluted(d.share(0))));
  }

  private Optional<Solution> find(String name) {
    if (WATER.contains(name.toLowerCase(Locale.ROOT))) {
      return Optional.of(Solution.WATER);
    }
    Solution own = shelf.get(name);
    return own != null ? Optional.of(own) : stock(name.toLowerCase(Locale.ROOT));
  }

  private static Optional<Solution> stock(String name) {
    Matcher stock = STOCK.matcher(name);
    if (!stock.matches()) {
      return Optional.empty();
    }
    double percent = Double.parseDouble(stock.group(3));
    if (!(percent > 0) || percent > PERCENT_MAX) {
      return Optional.empty();
    }
    return Optional.of(
        stock.group(1) != null ? Solution.bromide(percent) : Solution.sulfite(percent));
  }

  private String accepted() {
    return "water, bromide N % or sulfite N % (weight in volume, up to 40 %)"
        + (shelf.isEmpty()
            ? "; concentrates are put on the shelf first"
            : ", or from the shelf: " + String.join(", ", shelf.keySet()));
  }
}
