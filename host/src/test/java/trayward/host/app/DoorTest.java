package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.Settings;
import trayward.host.Verifies;
import trayward.host.Verifies.Side;
import trayward.host.web.guard.Door;
import trayward.host.web.guard.PasswordFile;

/** Where the page is served, and to whom, as settings and the password's file say it. */
@Timeout(60)
class DoorTest {

  @TempDir private Path folder;

  private Path config(String server) throws Exception {
    return Files.writeString(
        folder.resolve("door.toml"),
        "[link]\ntcp_port = 1502\n[log]\nfolder = \""
            + folder.resolve("data")
            + "\"\n[server]\n"
            + server);
  }

  private static String lineOf(int code, String... words) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream out = new PrintStream(new ByteArrayOutputStream(), true, StandardCharsets.UTF_8);
    assertEquals(code, Main.run(words, out, new PrintStream(err, true, StandardCharsets.UTF_8)));
    return err.toString(StandardCharsets.UTF_8);
  }

  /** The command with its input from a pipe, where nobody sits. */
  private static int password(Path config, String said) {
    ByteArrayOutputStream told = new ByteArrayOutputStream();
    PrintStream out = new PrintStream(told, true, StandardCharsets.UTF_8);
    Terminal pipe =
        new Terminal() {
          @Override
          public boolean attended() {
            return false;
          }

          @Override
          public Optional<String> line() {
            return said.lines().findFirst();
          }
        };
    int code = new PasswordWork(out, out, pipe).set(Optional.of(config));
    assertFalse(told.toString(StandardCharsets.UTF_8).contains("correct horse"));
    return code;
  }

  @Test
  @Verifies(value = "SR-19", side = Side.WITHHOLDS)
  void anAddressOthersCanReachIsRefusedWithoutAPassword() throws Exception {
    for (String address : new String[] {"0.0.0.0", "192.0.2.7", "::"}) {
      Path file = config("address = '" + address + "'\n");
      for (String command : new String[] {"run", "host"}) {
        String line = lineOf(2, command, "--config", file.toString());
        assertEquals(1, line.lines().count(), line);
        assertTrue(line.contains("server.address") && line.contains("password --config"), line);
      }
    }
    assertFalse(Files.exists(folder.resolve("data")), "nothing was begun");
  }

  @Test
  @Verifies(value = "SR-19", side = Side.ALLOWS)
  void withAPasswordOfThePersonsItIsServedThere() throws Exception {
    Path file = config("address = '0.0.0.0'\nnames = ['tray.local']\n");
    assertEquals(2, password(file, "short\n"));
    assertEquals(2, password(file, ""));
    assertEquals(0, password(file, "correct horse\n"));
    Door door = DoorWork.of(Settings.read(file), Optional.of(file), false);
    assertTrue(door.password().orElseThrow().matches("correct horse".toCharArray()));
    assertFalse(door.atTray(), "a host by itself does not stand at the tray");
    assertTrue(DoorWork.of(Settings.read(file), Optional.of(file), true).atTray());
    assertTrue(DoorWork.caution(Settings.read(file), door).isPresent());
  }

  @Test
  void aSpoiltPasswordFileLetsNobodyInAndNothingStart() throws Exception {
    Path file = config("");
    Files.createDirectories(folder.resolve("data"));
    Path kept = Files.writeString(folder.resolve("data").resolve(PasswordFile.NAME), "x");
    String line = lineOf(2, "run", "--config", file.toString());
    assertTrue(line.startsWith(kept.toString()), line);
  }

  @Test
  void aKeystoreOpensWithItsPasswordOrTheStartIsRefused() throws Exception {
    Path store = Keystores.made(folder, "of the store");
    Path right = Files.writeString(folder.resolve("right.txt"), "of the store\n");
    Path wrong = Files.writeString(folder.resolve("wrong.txt"), "of another\n");
    String keys = "keystore = '" + store + "'\nkeystore_password_file = '%s'\n";
    Settings open = Settings.read(config(keys.formatted(right)));
    Door door = DoorWork.of(open, Optional.empty(), true);
    assertEquals("https", door.scheme());
    assertFalse(door.toString().contains("of the store"), door.toString());
    String line = lineOf(2, "run", "--config", config(keys.formatted(wrong)).toString());
    assertTrue(line.contains("server.keystore") && !line.contains("of another"), line);
    String none = lineOf(2, "run", "--config", config("keystore = '" + store + "'\n").toString());
    assertTrue(none.contains(DoorWork.VARIABLE), none);
  }

  @Test
  void aDoorWithoutAnythingSaidIsThisComputersOwn() throws ConfigRefused {
    Settings standard = Settings.standard();
    Door door = DoorWork.of(standard.inFolder(folder), Optional.empty(), true);
    assertEquals("127.0.0.1", door.address());
    assertTrue(door.password().isEmpty() && door.atTray());
    assertTrue(DoorWork.caution(standard, door).isEmpty());
  }
}
