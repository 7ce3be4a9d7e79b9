package trayward.host.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class MarkKindTest {

  @Test
  void every_kind_is_found_by_its_word() {
    for (MarkKind kind : MarkKind.values()) {
      assertEquals(Optional.of(kind), MarkKind.of(kind.word()));
    }
    assertEquals(Optional.of(MarkKind.EMERGENCE), MarkKind.of("emergence"));
  }

  @Test
  void another_word_or_another_case_is_no_kind() {
    assertEquals(Optional.empty(), MarkKind.of("snatch"));
    assertEquals(Optional.empty(), MarkKind.of("IN"));
    assertEquals(Optional.empty(), MarkKind.of(""));
  }
}
