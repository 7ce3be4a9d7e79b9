package trayward.host.session;

import java.util.List;
import java.util.Locale;

/**
 * Cautions that belong to a step after the developer. The one table. They warn; the lack of one
 * says nothing. Common knowledge of the trade and of safety data sheets, from memory; the sheet of
 * the very product comes first.
 */
public enum StepCaution {
  /** Hydrogen sulfide. */
  SULFIDE_AND_ACID(
      "Keep a sulfide toner away from every acid, the stop bath and acid fixer too: together they"
          + " give hydrogen sulfide, which kills and dulls the sense of smell first."),
  /** Sulfur dioxide. */
  ACID_AND_FIXER(
      "Acid and fixer give off sulfur dioxide, which attacks the lungs, of people with asthma most:"
          + " drain well between them and never pour one into the other."),
  /** Hydrogen cyanide. */
  BLEACH_AND_ACID(
      "A ferricyanide bleach with strong acid or heat may give off hydrogen cyanide: keep them"
          + " apart."),
  /** Selenium. */
  SELENIUM(
      "Selenium toner is poisonous by mouth, through the skin and breathed in: gloves, and its"
          + " waste goes to hazardous waste."),
  /** Skin and eyes. */
  SKIN(
      "Gloves and tongs, goggles for concentrates: these baths harm skin and eyes, and a skin once"
          + " sensitised stays so."),
  /** Air. */
  VENTILATION(
      "Ventilate; cover trays not in use. With a smell, stinging eyes or dizziness: leave and air"
          + " the room.");

  private final String words;

  StepCaution(String words) {
    this.words = words;
  }

  /** Those that belong to a step. */
  static List<StepCaution> of(StepKind kind) {
    return switch (kind) {
      case DRAIN -> List.of(SKIN);
      case STOP -> List.of(SULFIDE_AND_ACID, ACID_AND_FIXER, BLEACH_AND_ACID, SKIN, VENTILATION);
      case FIX -> List.of(SULFIDE_AND_ACID, ACID_AND_FIXER, SKIN, VENTILATION);
      case BLEACH -> List.of(SULFIDE_AND_ACID, BLEACH_AND_ACID, SKIN, VENTILATION);
      case TONE -> List.of(SULFIDE_AND_ACID, SELENIUM, SKIN, VENTILATION);
      case WASH, DRY -> List.of();
    };
  }

  /** Its name in JSON. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** One sentence or two for the person. */
  public String words() {
    return words;
  }
}
