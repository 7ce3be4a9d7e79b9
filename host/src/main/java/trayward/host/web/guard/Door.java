package trayward.host.web.guard;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Where the page is served, and to whom. Immutable.
 *
 * @param address the address listened on
 * @param port TCP port; 0 for any free one
 * @param atTray whether who uses the page stands at the tray, so that it may start and reset
 * @param names further names under which the page may be asked for
 * @param password what a person must know; empty where nobody is asked
 * @param keystore certificate and key; empty for plain HTTP
 */
public record Door(
    String address,
    int port,
    boolean atTray,
    List<String> names,
    Optional<PasswordHash> password,
    Optional<Keystore> keystore) {

  /**
   * Certificate and key, PKCS #12.
   *
   * @param file the keystore
   * @param password its password
   */
  public record Keystore(Path file, String password) {

    /** Without the password: a record is written into logs sooner or later. */
    @Override
    public String toString() {
      return "Keystore[" + file + "]";
    }
  }

  /** A page at the tray for this computer alone, on any free port. */
  public static Door local() {
    return new Door("127.0.0.1", 0, true, List.of(), Optional.empty(), Optional.empty());
  }

  /** How a browser names the page, but for its port. */
  public String scheme() {
    return keystore.isPresent() ? "https" : "http";
  }
}
