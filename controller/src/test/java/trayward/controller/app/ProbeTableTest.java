package trayward.controller.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.modbus.SerialSettings;
import trayward.controller.onewire.RomId;
import trayward.controller.port.ProbeRole;
import trayward.controller.sense.Thermistor;
import trayward.controller.transmitter.Channel;
import trayward.controller.transmitter.RegisterType;
import trayward.controller.transmitter.Reports;

/** Which temperature comes from where, as a person writes it. */
class ProbeTableTest {

  private static final RomId ID = new RomId(RomId.THERMOMETER, 0x0316a10264ffL);

  @TempDir private Path folder;

  private static ProbeTable read(String text) throws ConfigRefused {
    Section top = TomlText.parse("tray.toml", text);
    return ProbeTable.read(top.table("probes"), top.table("transmitter"), true);
  }

  private static String refused(String text) {
    return assertThrows(ConfigRefused.class, () -> read(text)).line();
  }

  private static Channel bath(String keys) throws ConfigRefused {
    Channel channel =
        read("[probes]\nbath='transmitter'\n[transmitter]\nserial_port='/dev/ttyUSB0'\n"
                + "[transmitter.bath]\n"
                + keys)
            .transmitter()
            .orElseThrow()
            .channels()
            .get(ProbeRole.BATH);
    return Objects.requireNonNull(channel);
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void aRomIsTakenAsAFolderOrWithAllItsDigits() throws Exception {
    String whole = ID.whole();
    Map<ProbeRole, String> folder = Map.of(ProbeRole.BATH, ID.folder());
    assertEquals(folder, read("[probes]\nbath='" + whole + "'").oneWire());
    String turned = new StringBuilder(whole).reverse().toString().replaceAll("(.)(.)", "$2$1");
    assertEquals(folder, read("[probes]\nbath='" + turned + "'").oneWire());
    assertEquals(
        Map.of(ProbeRole.BATH, "28-0316A10264FF"),
        read("[probes]\nbath='28-0316A10264FF'").oneWire(),
        "a folder in capitals stays as it is");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aRomWithAWrongCheckSumIsRefusedWithTheRightOne() {
    String wrong = ID.whole().substring(0, 14) + "01";
    String line = refused("[probes]\nbath='" + wrong + "'");
    Refused.names(line, "probes.bath", wrong, "check sum 01, computed " + ID.whole().substring(14));
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void oneProbeInTwoWritingsIsNotTwoAndAnotherFamilyIsNoThermometer() {
    Refused.names(
        refused("[probes]\nbath='" + ID.folder() + "'\nplate='" + ID.whole() + "'"),
        "probes.plate",
        "not used for another place");
    RomId switchChip = new RomId(0x29, 1);
    Refused.names(refused("[probes]\nbath='" + switchChip.whole() + "'"), "probes.bath", "28-");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void aTransmitterIsReadKeyByKey() throws Exception {
    ProbeTable table =
        read(
            """
            [probes]
            bath = "transmitter"
            plate = "28-0316a10264ff"
            [transmitter]
            serial_port = "/dev/ttyUSB0"
            baud = 19200
            parity = "even"
            stop_bits = 2
            [transmitter.bath]
            unit = 3
            function = 3
            register = 100
            type = "int32"
            word_order = "low-first"
            scale = 0.001
            offset = -0.2
            reports = "pt100_ohm"
            fault_value = -1
            """);
    TransmitterTable line = table.transmitter().orElseThrow();
    assertEquals(
        new SerialSettings("/dev/ttyUSB0", 19_200, SerialSettings.Parity.EVEN, 2), line.serial());
    assertEquals(
        Map.of(
            ProbeRole.BATH,
            new Channel(
                3,
                3,
                100,
                RegisterType.INT32,
                true,
                0.001,
                -0.2,
                new Reports.Pt100Ohm(),
                OptionalDouble.of(-1))),
        line.channels());
    assertEquals(
        Map.of(ProbeRole.BATH, "transmitter-3-3-100", ProbeRole.PLATE, "28-0316a10264ff"),
        table.names());
    assertTrue(table.has(ProbeRole.BATH) && table.has(ProbeRole.PLATE));
    assertEquals(Optional.empty(), read("[probes]\nbath='28-0316a10264ff'").transmitter());
  }

  @Test
  void whatIsLeftOutIsTheFirstInputRegisterInDegrees() throws Exception {
    assertEquals(
        new Channel(
            1,
            4,
            0,
            RegisterType.FLOAT32,
            false,
            1,
            0,
            new Reports.Celsius(),
            OptionalDouble.empty()),
        bath("type='float32'"));
  }

  /** The fit through 0, 25 and 50 °C of a published 10 kΩ table: 39.99 °C at 5327 Ω. */
  @Test
  void aThermistorIsDescribedInOneOfThreeWays() throws Exception {
    assertEquals(
        new Reports.ThermistorOhm(new Thermistor.Beta(5000, 3435)),
        bath("reports='thermistor_ohm'\nscale=5\nr25_ohm=5000\nbeta_k=3435").reports());
    assertEquals(
        new Reports.ThermistorOhm(
            new Thermistor.SteinhartHart(1.129148e-3, 2.34125e-4, 8.76741e-8)),
        bath("reports='thermistor_ohm'\nsteinhart_hart=[1.129148e-3, 2.34125e-4, 8.76741e-8]")
            .reports());
    Reports fitted =
        bath("reports='thermistor_ohm'\npoints_c_ohm=[0, 32650, 25, 10000, 50, 3603]").reports();
    assertEquals(39.99, fitted.celsius(5327), 0.01);
  }

  /** Near 40 °C a Pt100 changes by 0.38 Ω/K, 10 kΩ of β 3950 by 213 Ω/K (own arithmetic). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "scale=0.0625 | scale=0.1",
        "scale=-0.05 | scale=1",
        "type='float32' | type='uint16'",
        "reports='pt100_ohm'\\nscale=0.024 | reports='pt100_ohm'\\nscale=0.025",
        "reports='thermistor_ohm'\\nbeta_k=3950\\nscale=13 | reports='thermistor_ohm'\\nbeta_k=3950\\nscale=14",
      })
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void stepsTooCoarseToTellAFrozenReadingFromALiveOneAreRefused(String fine, String coarse)
      throws Exception {
    assertEquals(1, bath(fine.replace("\\n", "\n")).unit());
    String line = assertThrows(ConfigRefused.class, () -> bath(coarse.replace("\\n", "\n"))).line();
    Refused.names(line, "transmitter.bath.scale", "at most 0.0625 K");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "unit=0 | transmitter.bath.unit | 1 to 247",
        "function=6 | transmitter.bath.function | 3 to 4",
        "register=65535 | transmitter.bath.register | 0 to 65534",
        "type='int8' | transmitter.bath.type | float32",
        "word_order='big' | transmitter.bath.word_order | high-first",
        "scale=0 | transmitter.bath.scale | not 0",
        "scale=nan | transmitter.bath.scale | 1000000",
        "reports='kelvin' | transmitter.bath.reports | pt100_ohm",
        "reports='thermistor_ohm' | transmitter.bath.reports | steinhart_hart",
        "reports='thermistor_ohm'\\nbeta_k=3950\\nsteinhart_hart=[1,1,1] | transmitter.bath.reports | one",
        "reports='thermistor_ohm'\\nbeta_k=3 | transmitter.bath.beta_k | 1000 to 10000",
        "reports='thermistor_ohm'\\nsteinhart_hart=[1,2] | transmitter.bath.steinhart_hart | 3 numbers",
        "reports='thermistor_ohm'\\nsteinhart_hart=[1,2,'x'] | transmitter.bath.steinhart_hart | 3 num",
        "reports='thermistor_ohm'\\nsteinhart_hart=[1e-3,-2e-4,0] | transmitter.bath.steinhart | falls",
        "reports='thermistor_ohm'\\npoints_c_ohm=[0,1,25,2,50,3] | transmitter.bath.points | falls",
        "beta_k=3950 | transmitter.bath.beta_k | unit",
        "colour='red' | transmitter.bath.colour | unit",
      })
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aWrongKeyIsNamedWithWhatIsAccepted(String keys, String name, String accepted) {
    String toml = keys.replace("\\n", "\n");
    String line = assertThrows(ConfigRefused.class, () -> bath(toml)).line();
    Refused.names(line, name, accepted);
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void aTransmitterNeedsItsTableAndItsPort() {
    String bath = "[probes]\nbath='transmitter'\n";
    Refused.names(refused(bath), "transmitter.bath", "nothing", "a table");
    Refused.names(
        refused(bath + "[transmitter.bath]\nscale=0.01"), "transmitter.serial_port", "nothing");
    Refused.names(
        refused("[probes]\nbath='28-0316a10264ff'\n[transmitter]\nserial_port='/dev/ttyS0'"),
        "transmitter.serial_port",
        "no key here");
    Refused.names(
        refused(bath + "[transmitter]\nserial_port='x'\nbaud=300\n[transmitter.bath]\nscale=0.01"),
        "transmitter.baud",
        "1200 to 115200");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void anInstallationThatIsStillWiredMayLackItsProbes() throws Exception {
    String text = "[io]\nkind='files'\nfolder='%1$s'\nonewire_root='%1$s'\n".formatted(folder);
    Path file = Files.writeString(folder.resolve("tray.toml"), text + "[tray]\nheater_w=400\n");
    assertEquals(Map.of(), Settings.readUnfinished(file).probes().names());
    Refused.names(
        assertThrows(ConfigRefused.class, () -> Settings.read(file)).line(), "probes.bath");
  }
}
