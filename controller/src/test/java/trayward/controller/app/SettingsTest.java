package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.keep.UpkeepItem;
import trayward.controller.port.ProbeRole;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.Limit;
import trayward.controller.safety.Limits;
import trayward.controller.sim.PlantParameters;
import trayward.controller.sim.ProbeParameters;

/** SR-19 for the configuration: defaults, and what its own tables refuse. */
class SettingsTest {

  private static final String RIG =
      "[io]\nkind='files'\nfolder='%s'\nonewire_root='%s'\n[probes]\nbath='28-0123456789ab'\n";

  @TempDir Path folder;

  private Settings read(String toml) throws ConfigRefused, IOException {
    return Settings.read(Files.writeString(folder.resolve("tray.toml"), toml));
  }

  private String refused(String toml) {
    return Refused.line(() -> read(toml));
  }

  private String rig() {
    return RIG.formatted(folder, folder);
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void anEmptyFileIsTheSimulatedTrayWithThePageOnLoopback() throws Exception {
    for (Settings s : new Settings[] {Settings.standard(), read(""), read("# nothing\n")}) {
      assertEquals(new Settings.Io.Sim(1), s.io());
      assertEquals(
          new ServerTable("127.0.0.1", 8467, Optional.empty(), List.of(), Optional.empty()),
          s.server());
      assertEquals(Path.of("trayward-data"), s.logFolder());
      assertEquals(new ControlTable(40, "auto", 5, 0.5, true, false), s.control());
      assertEquals(PlantParameters.REFERENCE, s.plant());
      assertEquals(TrayModel.REFERENCE, s.model());
      assertEquals(ProbeParameters.BATH, s.bathProbe());
      assertTrue(s.plateFitted());
      assertFalse(s.secondBathFitted());
      assertEquals(new FanTable(150, 1500, 3, 4, true, true), s.fan());
      for (Limit limit : Limit.values()) {
        assertEquals(limit.standard(), s.limits().get(limit), limit.key());
      }
    }
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void everyLimitMayBeSetToEitherEndOfItsRange() throws Exception {
    for (Limit limit : Limit.values()) {
      for (double end : new double[] {limit.range().min(), limit.range().max()}) {
        assertEquals(end, Limits.STANDARD.with(limit, end).get(limit));
      }
    }
    Settings s = read("[limits]\npurge_s = 90\nbath_hard_c = 50.5\n");
    assertEquals(90, s.limits().get(Limit.PURGE_S));
    assertEquals(50.5, s.limits().get(Limit.BATH_HARD_C));
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void noLimitGoesBeyondItsRangeAndTheLineNamesKeyValueAndRange() {
    for (Limit limit : Limit.values()) {
      for (double beyond : new double[] {limit.range().min() - 0.1, limit.range().max() + 0.1}) {
        String line = refused("[limits]\n" + limit.key() + " = " + beyond + "\n");
        assertEquals(
            folder.resolve("tray.toml")
                + ": limits."
                + limit.key()
                + ": found "
                + beyond
                + ", accepted is "
                + limit.range().words(),
            line);
      }
    }
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void aRigWithThreeProbesIsTaken() throws Exception {
    Settings s = read(rig() + "second_bath='28-0000000000b2'\nplate='28-ffffffffffff'\n");
    assertEquals(new Settings.Io.Files(folder, folder), s.io());
    assertEquals(
        Map.of(
            ProbeRole.BATH, "28-0123456789ab",
            ProbeRole.SECOND_BATH, "28-0000000000b2",
            ProbeRole.PLATE, "28-ffffffffffff"),
        s.probes().names());
    assertTrue(s.plateFitted() && s.secondBathFitted());
    assertFalse(read(rig()).plateFitted());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "28-0123456789ag",
        "28-0123456789a",
        "10-0123456789ab",
        "28-0123456789ab ",
        "../x"
      })
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aRomIdInAnotherFormIsRefused(String rom) {
    String line = refused(rig() + "plate='" + rom + "'\n");
    Refused.names(line, "tray.toml", "probes.plate", "'" + rom + "'", "28-");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aRigNeedsABathProbeFoldersThatExistAndNoProbeTwice() {
    String noProbe = rig().substring(0, rig().indexOf("[probes]"));
    Refused.names(refused(noProbe), "probes.bath", "found nothing", "a text");
    Refused.names(refused(rig() + "plate='28-0123456789ab'\n"), "probes.plate", "not used");
    Refused.names(refused(rig() + "plate='28-0123456789AB'\n"), "probes.plate", "not used");
    String gone = folder.resolve("gone").toString();
    Refused.names(refused(RIG.formatted(gone, folder)), "io.folder", gone, "exists");
    Refused.names(refused(RIG.formatted(folder, gone)), "io.onewire_root", gone, "exists");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "tray.local",
        "192.168.1.256",
        "1.2.3.4.5",
        "fe80::1%eth0",
        "12345::",
        ":",
        "example.org",
        "127.0.0.1.example.org",
        "127.0.0",
        "127.999.0.1"
      })
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void anAddressThatIsNoneIsRefused(String address) {
    String line = refused("[server]\naddress = '" + address + "'\n");
    Refused.names(line, "server.address", "'" + address + "'", "loopback");
  }

  @ParameterizedTest
  @ValueSource(strings = {"127.0.0.1", "127.255.0.9", "localhost", "::1"})
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void aLoopbackAddressIsTaken(String address) throws Exception {
    ServerTable server = read("[server]\naddress = '" + address + "'\n").server();
    assertEquals(address, server.address());
    assertTrue(server.loopback());
  }

  @ParameterizedTest
  @ValueSource(strings = {"0.0.0.0", "192.168.1.5", "::", "128.0.0.1", "fd00::5"})
  void anotherAddressIsKnownNotToBeLoopback(String address) throws Exception {
    assertFalse(read("[server]\naddress = '" + address + "'\n").server().loopback());
  }

  @Test
  void aHostStandsAtTheTrayOnlyWhereTheFileOrTheCommandSaysSo() throws Exception {
    assertTrue(read("").server().hostAtTray());
    assertFalse(read("").server().hostAtTray(false));
    assertTrue(read("[server]\nhost_at_tray = true\n").server().hostAtTray(false));
    assertFalse(read("[server]\nhost_at_tray = false\n").server().hostAtTray());
  }

  @Test
  void namesAndAKeystoreAreReadAndChecked() throws Exception {
    assertEquals(
        List.of("tray.local", "darkroom"),
        read("[server]\nnames = ['Tray.local', 'darkroom']\n").server().names());
    for (String wrong : new String[] {"'x'", "['a b']", "['-a']", "['http://a']", "[1]", "['']"}) {
      Refused.names(refused("[server]\nnames = " + wrong + "\n"), "server.names");
    }
    Path file = Files.writeString(folder.resolve("page.p12"), "");
    ServerTable.Keystore keystore =
        read("[server]\nkeystore = '" + file + "'\n").server().keystore().orElseThrow();
    assertEquals(new ServerTable.Keystore(file, Optional.empty()), keystore);
    Refused.names(
        refused("[server]\nkeystore = '/nowhere.p12'\n"), "server.keystore", "'/nowhere.p12'");
    Refused.names(
        refused("[server]\nkeystore_password_file = '" + file + "'\n"),
        "server.keystore",
        "nothing");
  }

  @Test
  @Verifies(value = "SR-02", side = Side.WITHHOLDS)
  void withoutAProofOfAirMovementNothingStarts() {
    Refused.names(refused("[fan]\nairflow_switch=false\n"), "fan.airflow_switch", "false", "SR-02");
  }

  @Test
  @Verifies(value = "SR-02", side = Side.ALLOWS)
  void anAirflowSwitchAloneIsAProofOfAirMovement() throws Exception {
    assertFalse(read("[fan]\ntachometer=false\n").fan().tachometer());
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aFileThatCannotBeReadIsToldInOneLine() throws Exception {
    Path gone = folder.resolve("gone.toml");
    Refused.names(Refused.line(() -> Settings.read(gone)), "gone.toml", "cannot be read");
    Refused.names(Refused.line(() -> Settings.read(folder)), folder.toString(), "cannot be read");
    Path latin = folder.resolve("latin.toml");
    Files.write(latin, "name = 'é'".getBytes(StandardCharsets.ISO_8859_1));
    Refused.names(Refused.line(() -> Settings.read(latin)), "latin.toml", "UTF-8");
    Path large = Files.writeString(folder.resolve("l.toml"), "#".repeat((1 << 20) + 1));
    Refused.names(Refused.line(() -> Settings.read(large)), "l.toml", "1 MiB");
  }

  @Test
  @Verifies(value = "SR-23", side = Side.ALLOWS)
  void intervalsOfMaintenanceHaveATableOfTheirOwn() throws Exception {
    Settings settings = read("[upkeep]\nbreaker_test_days = 14\ncartridge_hours = 8\n");
    assertEquals(14, settings.upkeep().days(UpkeepItem.BREAKER_TEST));
    assertEquals(365, settings.upkeep().days(UpkeepItem.FAN_SERVICE));
    assertEquals(8, settings.upkeep().cartridgeHours());
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aBreakerTestedLessThanEveryQuarterIsRefused() {
    Refused.names(refused("[upkeep]\nbreaker_test_days = 93\n"), "upkeep.breaker_test_days", "92");
    Refused.names(refused("[upkeep]\nbreaker = 3\n"), "upkeep.breaker", "unknown key");
  }
}
