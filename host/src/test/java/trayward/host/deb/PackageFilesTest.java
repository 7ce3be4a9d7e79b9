package trayward.host.deb;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.app.Settings;

/** What goes into the Debian package, as it lies in the source. */
class PackageFilesTest {

  private static final Path DEB = Path.of("src", "deb");

  /** The one kind of value that depends on the computer: folders that must exist. */
  private static final Pattern OUTSIDE_FOLDER =
      Pattern.compile("(?m)^(folder = \"/run/.*\"|onewire_root = \".*\")$");

  @TempDir private Path folder;

  private Settings read(Path file) throws Exception {
    Matcher outside = OUTSIDE_FOLDER.matcher(Files.readString(file));
    String here = outside.replaceAll(m -> m.group().split(" ", -1)[0] + " = \"" + folder + "\"");
    return Settings.read(Files.writeString(folder.resolve(file.getFileName()), here));
  }

  private static List<Path> tomlFiles(String under) throws IOException {
    try (Stream<Path> files = Files.list(DEB.resolve(under))) {
      return files.filter(f -> f.toString().endsWith(".toml")).sorted().toList();
    }
  }

  private static String unit(String half) throws IOException {
    return Files.readString(DEB.resolve("units").resolve("trayward-" + half + ".service"));
  }

  private static Set<String> lines(String text) {
    return text.lines().map(String::strip).collect(Collectors.toSet());
  }

  @TestFactory
  Stream<DynamicTest> everyExampleAndConfigurationIsTakenByTheProgramsOwnReader() throws Exception {
    return Stream.concat(tomlFiles("examples").stream(), tomlFiles("etc").stream())
        .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> read(file)));
  }

  @Test
  void thereIsAnExampleForEachKindOfWiring() throws Exception {
    Set<String> kinds = new TreeSet<>();
    for (Path file : tomlFiles("examples")) {
      Settings settings = read(file);
      kinds.add(settings.io().getClass().getSimpleName());
      settings.link().serial().ifPresent(line -> kinds.add("serial link"));
      settings.link().tcpPort().ifPresent(port -> kinds.add("loopback link"));
      if (Files.readString(file).contains("[transmitter]")) {
        kinds.add("transmitters");
      }
      if (Files.readString(file).contains("\"/sys/bus/w1/devices\"")) {
        kinds.add("1-Wire");
      }
    }
    assertEquals(
        Set.of("Sim", "Files", "Pi", "1-Wire", "transmitters", "serial link", "loopback link"),
        kinds);
  }

  @Test
  void asInstalledBothHalvesMeetOnOneLineAndEachKeepsItsDataInAFolderOfItsOwn() throws Exception {
    Settings controller = read(DEB.resolve("etc/controller.toml"));
    Settings host = read(DEB.resolve("etc/host.toml"));
    assertTrue(controller.link().tcpPort().isPresent());
    assertEquals(controller.link(), host.link());
    assertEquals("/var/lib/trayward-controller", controller.logFolder().toString());
    assertEquals("/var/lib/trayward-host", host.logFolder().toString());
    assertFalse(controller.io().outside(), "nothing real is switched before somebody says so");
  }

  @Test
  void whatStandsInEtcIsAConfigurationFileThatAnUpgradeLeavesAlone() throws Exception {
    Set<String> there =
        tomlFiles("etc").stream()
            .map(file -> "/etc/trayward/" + file.getFileName())
            .collect(Collectors.toSet());
    assertEquals(there, lines(Files.readString(DEB.resolve("control/conffiles"))));
  }

  @Test
  void neitherRemovalNorPurgeTouchesTheData() throws Exception {
    for (String script : List.of("postinst", "prerm", "postrm")) {
      String commands =
          Files.readString(DEB.resolve("control").resolve(script))
              .lines()
              .filter(line -> !line.strip().startsWith("#") && !line.strip().startsWith("echo"))
              .collect(Collectors.joining("\n"));
      assertFalse(commands.contains("/var/lib"), script);
    }
  }

  @Test
  void theControllersUnitAsksForRealTimeAWatchdogOfScansAndNoNetworkBeyondLoopback()
      throws Exception {
    Set<String> unit = lines(unit("controller"));
    for (String wanted :
        List.of(
            "Type=notify",
            "WatchdogSec=5",
            "CPUSchedulingPolicy=fifo",
            "MemorySwapMax=0",
            "DevicePolicy=closed",
            "User=trayward-controller",
            "SupplementaryGroups=gpio dialout",
            "StateDirectory=trayward-controller")) {
      assertTrue(unit.contains(wanted), wanted);
    }
  }

  @Test
  void bothUnitsAreHardenedAlike() throws Exception {
    for (String half : List.of("controller", "host")) {
      Set<String> unit = lines(unit(half));
      for (String wanted :
          List.of(
              "NoNewPrivileges=yes",
              "CapabilityBoundingSet=",
              "ProtectSystem=strict",
              "ProtectHome=yes",
              "PrivateTmp=yes",
              "IPAddressDeny=any",
              "IPAddressAllow=localhost",
              "SystemCallFilter=@system-service",
              "Restart=on-failure",
              "RestartPreventExitStatus=2")) {
        assertTrue(unit.contains(wanted), half + ": " + wanted);
      }
    }
  }

  @Test
  void theControllersHeapNeverAsksForMore() throws Exception {
    Set<String> options = lines(Files.readString(DEB.resolve("share/controller.options")));
    assertTrue(options.contains("-Xms12m"));
    assertTrue(options.contains("-Xmx12m"));
  }
}
