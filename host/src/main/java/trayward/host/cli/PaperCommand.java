package trayward.host.cli;

import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What goes on paper: {@code card} and {@code sheet}. One thread. */
final class PaperCommand {

  private PaperCommand() {}

  /** Puts both commands below another one. */
  static void below(CommandLine line, Work work) {
    line.addSubcommand(new Card(work)).addSubcommand(new Sheet(work));
  }

  /** What both take; filled in before a call. */
  private abstract static class Paper extends OfLog {

    @Parameters(paramLabel = "N", description = "number of the print or the session")
    long number;

    @Option(names = "--out", required = true, paramLabel = "FILE", description = "the file")
    Path out = Path.of("");

    Paper(Work work) {
      super(work);
    }
  }

  @Command(
      name = "card",
      mixinStandardHelpOptions = true,
      description = "Writes a card of one print for the notebook, a page of A5 as PDF.")
  private static final class Card extends Paper {

    Card(Work work) {
      super(work);
    }

    @Override
    public Integer call() {
      return work.card(folder, number, out);
    }
  }

  @Command(
      name = "sheet",
      mixinStandardHelpOptions = true,
      description = "Writes a sheet of one session, one HTML file to print.")
  private static final class Sheet extends Paper {

    Sheet(Work work) {
      super(work);
    }

    @Override
    public Integer call() {
      return work.sheet(folder, number, out);
    }
  }
}
