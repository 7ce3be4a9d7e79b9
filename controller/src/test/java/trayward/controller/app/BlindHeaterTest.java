package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;

/** SR-07: without a plate probe the heater may be at most 250 W, declared or believed. */
class BlindHeaterTest {

  @TempDir Path folder;

  private Settings read(String toml) throws ConfigRefused, IOException {
    return Settings.read(Files.writeString(folder.resolve("tray.toml"), toml));
  }

  private String refused(String toml) {
    return Refused.line(() -> read(toml));
  }

  private String rig() {
    return "[io]\nkind='files'\nfolder='%1$s'\nonewire_root='%1$s'\n".formatted(folder)
        + "[probes]\nbath='28-0123456789ab'\n";
  }

  @ParameterizedTest
  @CsvSource({
    "[plate_probe]~present=false~[tray]~heater_w=251, tray.heater_w, 251",
    "[plate_probe]~present=false~[tray]~heater_w=400~[model]~heater_w=200," + " tray.heater_w, 400",
    "[plate_probe]~present=false~[model]~heater_w=300, model.heater_w, 300",
    "[plate_probe]~present=false~[limits]~plate_blind_w=150, tray.heater_w, 250"
  })
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void aStrongHeaterWithoutAPlateProbeIsRefused(String toml, String key, String found) {
    Refused.names(refused(toml.replace('~', '\n')), key, "found " + found, "at most", "SR-07");
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void onTheRigTooWhateverTheModelBelieves() {
    Refused.names(refused(rig() + "[tray]\nheater_w=400\n"), "tray.heater_w", "400", "250 W");
    String hidden = rig() + "[tray]\nheater_w=400\n[model]\nheater_w=250\n";
    Refused.names(refused(hidden), "tray.heater_w", "found 400", "250 W");
  }

  @Test
  @Verifies(value = "SR-07", side = Side.ALLOWS)
  void twoHundredAndFiftyWattsWithoutAPlateProbeOrMoreWithOneAreTaken() throws Exception {
    assertFalse(read("[plate_probe]\npresent=false\n[tray]\nheater_w=250\n").plateFitted());
    assertEquals(400, read("[tray]\nheater_w=400\n").plant().heaterW());
  }
}
