package trayward.controller.keep;

import java.util.Map;

/** What was found where learned trays are kept. */
sealed interface LearnedLoad {

  /** What is on record, by name; nothing on a first run. */
  record Loaded(Map<String, LearnedTray> trays) implements LearnedLoad {}

  /** Something that is not what was written: nothing counts as learned. */
  record Unreadable(String why) implements LearnedLoad {}
}
