package trayward.host.app.campaign;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Writes {@code violations.txt} and a scenario for each seed in it. One thread. */
final class ViolationsFile implements AutoCloseable {

  /** Scenarios written at most: whoever mends starts with the first ones. */
  private static final int MOST_SCENARIOS = 1000;

  private final Path folder;
  private final Writer out;
  private int scenarios;

  ViolationsFile(Path folder) throws IOException {
    this.folder = folder;
    this.out = Files.newBufferedWriter(folder.resolve("violations.txt"), StandardCharsets.UTF_8);
  }

  void add(Outcome session) throws IOException {
    SessionPlan plan = session.plan();
    for (Finding finding : session.violations()) {
      out.write(
          String.format(
              Locale.ROOT,
              "seed %d: %s at %.1f s: %s [%s; plate probe %s, second probe %s]\n",
              plan.seed(),
              finding.hazard().words(),
              finding.tS(),
              finding.detail(),
              plan.brief(),
              plan.plateFitted() ? "yes" : "no",
              plan.secondFitted() ? "yes" : "no"));
    }
    if (!session.violations().isEmpty() && scenarios++ < MOST_SCENARIOS) {
      Files.writeString(folder.resolve("seed-" + plan.seed() + ".toml"), plan.toml());
    }
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
