package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class DryRunTest {

  @Test
  void itGoesThroughProvingPurgeAndContactTestUpToHeat() {
    assertEquals("HEATING", DryRun.run());
  }
}
