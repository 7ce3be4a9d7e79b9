package trayward.host.app.campaign;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Writes {@code violations.txt}, {@code missed.txt} and a scenario for each seed in them. One
 * thread.
 */
final class SessionFiles implements AutoCloseable {

  /** Scenarios written at most: whoever mends starts with the first ones. */
  private static final int MOST_SCENARIOS = 1000;

  private final Path folder;
  private final Writer violations;
  private final Writer missed;
  private final boolean each;
  private int scenarios;

  /**
   * New files.
   *
   * @param each write every scenario: a campaign of one session is one somebody wants to see
   */
  SessionFiles(Path folder, boolean each) throws IOException {
    this.folder = folder;
    this.each = each;
    this.violations = writer("violations.txt");
    this.missed = writer("missed.txt");
  }

  private Writer writer(String name) throws IOException {
    return Files.newBufferedWriter(folder.resolve(name), StandardCharsets.UTF_8);
  }

  void add(Outcome session) throws IOException {
    for (Finding finding : session.violations()) {
      String what =
          String.format(
              Locale.ROOT,
              "%s at %.1f s: %s",
              finding.hazard().words(),
              finding.tS(),
              finding.detail());
      violations.write(line(session.plan(), what));
    }
    boolean any = each || !session.violations().isEmpty();
    for (FaultOutcome fault : session.faults()) {
      if (fault.missed()) {
        missed.write(line(session.plan(), fault.kind().words()));
        any = true;
      }
    }
    if (any && scenarios++ < MOST_SCENARIOS) {
      SessionPlan plan = session.plan();
      Files.writeString(folder.resolve("seed-" + plan.seed() + ".toml"), plan.toml());
    }
  }

  private static String line(SessionPlan plan, String what) {
    return String.format(
        Locale.ROOT,
        "seed %d: %s [%s; plate probe %s, second probe %s]\n",
        plan.seed(),
        what,
        plan.brief(),
        plan.plateFitted() ? "yes" : "no",
        plan.secondFitted() ? "yes" : "no");
  }

  @Override
  public void close() throws IOException {
    try (Writer first = violations;
        Writer second = missed) {
      first.flush();
      second.flush();
    }
  }
}
