package trayward.host.cli;

import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;
import trayward.host.report.plan.PlanAnswer;
import trayward.host.report.plan.PlanJson;
import trayward.host.report.plan.PlanOption;
import trayward.host.report.plan.Planner;
import trayward.host.report.plan.Planners;

/**
 * The planners on the command line; their options are those of {@link Planner}, so that a request
 * to the page and a command take the same. One thread.
 */
final class PlanCommand {

  private static final String JSON = "--json";

  private PlanCommand() {}

  /** The command {@code plan}, with one command below it for each planner. */
  static CommandLine line() {
    CommandSpec spec = CommandSpec.create().name("plan").mixinStandardHelpOptions(true);
    spec.usageMessage()
        .description("Plans air, heat, mixing, exposure and baths. Nothing is switched.")
        .synopsisSubcommandLabel("PLANNER");
    for (Planner planner : Planners.all()) {
      spec.addSubcommand(planner.name(), new CommandLine(one(planner)));
    }
    return new CommandLine(spec);
  }

  private static CommandSpec one(Planner planner) {
    One work = new One(planner);
    CommandSpec spec = CommandSpec.wrapWithoutInspection(work);
    work.spec = spec;
    spec.name(planner.name()).mixinStandardHelpOptions(true);
    spec.usageMessage().description(planner.description()).sortOptions(false);
    for (PlanOption option : planner.options()) {
      spec.addOption(spec(option));
    }
    return spec.addOption(
        OptionSpec.builder(JSON).type(boolean.class).description("for machines").build());
  }

  private static OptionSpec spec(PlanOption option) {
    OptionSpec.Builder builder =
        OptionSpec.builder(option.dashed()).description(option.described().replace("%", "%%"));
    return option.kind() == PlanOption.Kind.FLAG
        ? builder.type(boolean.class).build()
        : builder.type(String.class).paramLabel(option.label()).build();
  }

  /** One planner's command. */
  private static final class One implements Callable<Integer> {

    private final Planner planner;
    private CommandSpec spec = CommandSpec.create();

    private One(Planner planner) {
      this.planner = planner;
    }

    @Override
    public Integer call() {
      CommandLine.ParseResult said = spec.commandLine().getParseResult();
      Map<String, String> told = new LinkedHashMap<>();
      for (PlanOption option : planner.options()) {
        if (said.hasMatchedOption(option.dashed())) {
          told.put(
              option.name(), String.valueOf((Object) said.matchedOptionValue(option.dashed(), "")));
        }
      }
      return say(planner.answer(told), said.hasMatchedOption(JSON));
    }

    private int say(Checked<PlanAnswer> answer, boolean json) {
      if (answer instanceof Checked.Bad<PlanAnswer> bad) {
        Problem p = bad.problem();
        String option = "--" + p.field().replace('_', '-');
        spec.commandLine()
            .getErr()
            .println(option + ": found " + p.found() + ", accepted is " + p.accepted());
        return Work.WRONG_WORDS;
      }
      PlanAnswer good = ((Checked.Good<PlanAnswer>) answer).value();
      PrintWriter out = spec.commandLine().getOut();
      List<String> lines = json ? List.of(PlanJson.text(good)) : good.text();
      lines.forEach(out::println);
      return Work.DONE;
    }
  }
}
