package trayward.host.app;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.Optional;
import trayward.controller.app.ConfigRefused;
import trayward.controller.app.ServerTable;
import trayward.controller.app.Settings;
import trayward.host.web.guard.Door;
import trayward.host.web.guard.PasswordFile;
import trayward.host.web.guard.PasswordHash;

/** Makes of the settings where the page is served, and to whom. Stateless. */
final class DoorWork {

  /** Says the keystore's password where no file does. */
  static final String VARIABLE = "TRAYWARD_KEYSTORE_PASSWORD";

  private DoorWork() {}

  /**
   * The door of these settings.
   *
   * @param config where they were read, for what is refused
   * @param atTray whether the command's own default is to stand at the tray
   * @throws ConfigRefused where others could reach the page without a password, or its files cannot
   *     be relied on
   */
  static Door of(Settings settings, Optional<Path> config, boolean atTray) throws ConfigRefused {
    ServerTable server = settings.server();
    String file = config.map(Path::toString).orElse("(defaults)");
    Optional<PasswordHash> password = password(settings.logFolder());
    if (password.isEmpty() && !server.loopback()) {
      throw new ConfigRefused(
          file
              + ": server.address: found '"
              + server.address()
              + "' and no password, accepted is a loopback address such as 127.0.0.1, or a password"
              + " set first with: password --config "
              + file);
    }
    Optional<Door.Keystore> keystore = Optional.empty();
    if (server.keystore().isPresent()) {
      keystore = Optional.of(keystore(server.keystore().get(), file));
    }
    return new Door(
        server.address(),
        server.port(),
        server.hostAtTray(atTray),
        server.names(),
        password,
        keystore);
  }

  private static Optional<PasswordHash> password(Path folder) throws ConfigRefused {
    try {
      return new PasswordFile(folder).read();
    } catch (PasswordFile.Unusable e) {
      throw new ConfigRefused(String.valueOf(e.getMessage()));
    }
  }

  private static Door.Keystore keystore(ServerTable.Keystore told, String file)
      throws ConfigRefused {
    Door.Keystore keystore = new Door.Keystore(told.file(), keystorePassword(told, file));
    try (var in = Files.newInputStream(told.file())) {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(in, keystore.password().toCharArray());
      if (store.size() > 0) {
        return keystore;
      }
    } catch (IOException | GeneralSecurityException e) {
      // told below, as an empty one is
    }
    throw new ConfigRefused(
        file
            + ": server.keystore: found '"
            + told.file()
            + "', accepted is a PKCS #12 file with a key that its password opens");
  }

  private static String keystorePassword(ServerTable.Keystore told, String file)
      throws ConfigRefused {
    try {
      if (told.passwordFile().isPresent()) {
        Path from = told.passwordFile().get();
        return Files.readString(from, StandardCharsets.UTF_8).lines().findFirst().orElse("");
      }
    } catch (IOException e) {
      throw new ConfigRefused(
          file + ": server.keystore_password_file: cannot be read: " + e.getMessage());
    }
    String said = System.getenv(VARIABLE);
    if (said == null) {
      throw new ConfigRefused(
          file
              + ": server.keystore_password_file: found nothing, accepted is a file whose first"
              + " line is the password, or "
              + VARIABLE
              + " in the environment");
    }
    return said;
  }

  /** Where the page is, in words. */
  static String greeting(Door door, int port) {
    String host = door.address().indexOf(':') >= 0 ? "[" + door.address() + "]" : door.address();
    return "Trayward is at " + door.scheme() + "://" + host + ":" + port + "/";
  }

  /** What to mind where others can reach the page. */
  static Optional<String> caution(Settings settings, Door door) {
    boolean clear = !settings.server().loopback() && door.keystore().isEmpty();
    return clear
        ? Optional.of(
            "Password and page cross the network in clear: anybody on it may read along. See"
                + " [server] keystore.")
        : Optional.empty();
  }
}
