package trayward.host.report.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;

/**
 * What a planner was told, checked option by option. Immutable.
 *
 * @param told what was written, by option, within what each accepts
 * @param options all there are
 */
record PlanWords(Map<String, String> told, List<PlanOption> options) {

  private static final int NAME_MAX = 40;

  PlanWords {
    told = Map.copyOf(told);
    options = List.copyOf(options);
  }

  /** What was told, or the first thing wrong with it. */
  static Checked<PlanWords> read(Map<String, String> told, List<PlanOption> options) {
    List<String> names = options.stream().map(PlanOption::name).toList();
    for (String name : told.keySet()) {
      if (!names.contains(name)) {
        return new Checked.Bad<>(
            new Problem(shortened(name), "an unknown option", String.join(", ", names)));
      }
    }
    for (PlanOption option : options) {
      String written = told.get(option.name());
      if (written == null && option.required()) {
        return option.refused("nothing", option.accepted());
      }
      Optional<Problem> problem = written == null ? Optional.empty() : option.problem(written);
      if (problem.isPresent()) {
        return new Checked.Bad<>(problem.get());
      }
    }
    return new Checked.Good<>(new PlanWords(told, options));
  }

  /** No way to fill an answer: all names there are, are shorter. */
  private static String shortened(String name) {
    return name.length() <= NAME_MAX ? name : name.substring(0, NAME_MAX) + "…";
  }

  boolean has(PlanOption option) {
    return told.containsKey(option.name());
  }

  String text(PlanOption option) {
    return told.getOrDefault(option.name(), option.otherwise());
  }

  boolean flag(PlanOption option) {
    return text(option).equals("true");
  }

  /** The number told, or its default; NaN where there is neither. */
  double number(PlanOption option) {
    return PlanOption.number(text(option));
  }

  /** The number told, or another. */
  double numberOr(PlanOption option, double otherwise) {
    return has(option) ? number(option) : otherwise;
  }

  /** The first of several options that belong together and is missing while another was told. */
  Optional<Problem> together(PlanOption... all) {
    boolean any = false;
    Optional<Problem> missing = Optional.empty();
    for (PlanOption each : all) {
      any |= has(each);
      if (!has(each) && missing.isEmpty()) {
        missing = Optional.of(new Problem(each.name(), "nothing", each.accepted()));
      }
    }
    return any ? missing : Optional.empty();
  }

  /** All that the answer rests on, told or taken, for machines. */
  Map<String, Object> asked() {
    Map<String, Object> all = new LinkedHashMap<>();
    for (PlanOption option : options) {
      String text = text(option);
      if (!text.isEmpty()) {
        all.put(option.name(), value(option, text));
      }
    }
    return all;
  }

  private Object value(PlanOption option, String text) {
    return switch (option.kind()) {
      case NUMBER -> Numbers.rounded(number(option));
      case CHOICE, TEXT -> text;
      case FLAG -> flag(option);
    };
  }

  /**
   * What was taken because it was not told, in a line; empty for nothing. None of it is no news.
   */
  String taken() {
    StringBuilder out = new StringBuilder();
    for (PlanOption option : options) {
      boolean silent =
          has(option) || option.otherwise().isEmpty() || option.otherwise().equals("0");
      if (!silent && option.kind() != PlanOption.Kind.FLAG) {
        out.append(out.isEmpty() ? "taken: " : ", ").append(option.dashed()).append(' ');
        out.append(option.otherwise());
      }
    }
    return out.toString();
  }
}
