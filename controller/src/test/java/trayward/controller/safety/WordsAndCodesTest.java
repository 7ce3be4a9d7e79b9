package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Codes that never change, and words that notes and page repeat. */
class WordsAndCodesTest {

  /** The register map: a code is never changed or used twice. */
  @Test
  void statesKeepTheirCodes() {
    assertEquals(
        List.of(0, 1, 2, 3, 4, 5, 6, 7), Arrays.stream(State.values()).map(State::code).toList());
    assertEquals(5, State.HOLDING.code());
    assertEquals(7, State.LOCKOUT.code());
  }

  @Test
  void relaysHaveNames() {
    assertEquals("the heater relay", Relay.HEATER.words());
    assertEquals("the safety relay", Relay.SAFETY.words());
    assertEquals(Relay.SAFETY, Relay.HEATER.other());
    assertEquals(Relay.HEATER, Relay.SAFETY.other());
  }

  @Test
  void aRequirementIsFoundByItsIdAndNoOtherIs() {
    for (Requirement requirement : Requirement.values()) {
      assertEquals(Optional.of(requirement), Requirement.of(requirement.id()));
    }
    assertEquals(Optional.empty(), Requirement.of("SR-99"));
    assertEquals("The plate's limits; a dry tray trips", Requirement.SR_07.summary());
  }
}
