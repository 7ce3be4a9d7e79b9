package trayward.host.store;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;
import trayward.host.session.Correction;
import trayward.host.session.FieldRule;
import trayward.host.session.Print;
import trayward.host.session.PrintField;

/** Changes of what is said of a print; what was said before is kept among the corrections. */
final class PrintChanges {

  private PrintChanges() {}

  /** A text as the log keeps it under a name, or what is wrong with it. */
  static Checked<String> checked(String name, String text) {
    Optional<PrintField> field = PrintField.of(name);
    FieldRule rule =
        field
            .map(PrintField::rule)
            .orElse(name.equals(PrintField.TITLE.name()) ? PrintField.TITLE : PrintField.NOTES);
    if (field.isEmpty() && !rule.name().equals(name)) {
      String accepted = "title, notes, " + String.join(", ", PrintField.words());
      return new Checked.Bad<>(new Problem(name, "an unknown field", accepted));
    }
    String plain = field.filter(PrintField::number).isPresent() ? text.strip() : text;
    return rule.takes(plain)
        ? new Checked.Good<>(field.map(f -> f.kept(plain)).orElse(plain))
        : new Checked.Bad<>(new Problem(name, text, rule.accepted()));
  }

  /** Makes all of them. */
  static PrintUpdate make(Handle handle, long number, Map<String, String> changes, Instant wall) {
    Optional<Print> print = PrintRows.byNumber(handle, number);
    if (print.isEmpty()) {
      return new PrintUpdate.NoSuchPrint();
    }
    Map<PrintField, String> fields =
        PrintFieldRows.of(handle, List.of(number)).getOrDefault(number, Map.of());
    PrintRows.setTexts(
        handle,
        number,
        changes.getOrDefault(PrintField.TITLE.name(), print.get().title()),
        changes.getOrDefault(PrintField.NOTES.name(), print.get().notes()));
    changes.forEach(
        (name, text) -> {
          Optional<PrintField> field = PrintField.of(name);
          field.ifPresent(f -> PrintFieldRows.set(handle, number, f, text));
          String was =
              field.map(f -> fields.getOrDefault(f, "")).orElseGet(() -> own(print.get(), name));
          CorrectionRows.keep(
              handle, new Correction(wall, Correction.Thing.PRINT, number, name, was, text));
        });
    WordRows.refresh(handle, number);
    return new PrintUpdate.Updated(PrintRows.byNumber(handle, number).orElseThrow());
  }

  private static String own(Print print, String name) {
    return name.equals(PrintField.TITLE.name()) ? print.title() : print.notes();
  }
}
