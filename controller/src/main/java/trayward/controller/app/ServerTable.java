package trayward.controller.app;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The {@code [server]} table: where the page is served, and to whom. Immutable.
 *
 * @param address the address listened on, written out: no name service is asked
 * @param port TCP port; 0 for any free one
 * @param atTray whether who uses the page stands at the tray, where the file says so
 * @param names names that this computer has in a network, for the check of the Host header
 * @param keystore certificate and key for TLS
 */
public record ServerTable(
    String address,
    int port,
    Optional<Boolean> atTray,
    List<String> names,
    Optional<Keystore> keystore) {

  /**
   * Certificate and key, PKCS #12.
   *
   * @param file the keystore
   * @param passwordFile a file whose first line is its password; without it the environment says it
   */
  public record Keystore(Path file, Optional<Path> passwordFile) {}

  /** Written out, so that no name service is asked: localhost, 127.0.0.0/8, ::1. */
  private static final Pattern LOOPBACK =
      Pattern.compile("localhost|127(\\.(25[0-5]|2[0-4]\\d|1?\\d?\\d)){3}|::1");

  private static final Pattern IPV4 =
      Pattern.compile("(25[0-5]|2[0-4]\\d|1?\\d?\\d)(\\.(25[0-5]|2[0-4]\\d|1?\\d?\\d)){3}");

  /** Only such a text goes to the platform's parser: with a colon it is never looked up. */
  private static final Pattern MAYBE_IPV6 = Pattern.compile("[0-9a-fA-F.]*:[0-9a-fA-F:.]*");

  /** Letters, digits and hyphens between dots (RFC 1123, section 2.1), at most 253. */
  private static final Pattern NAME =
      Pattern.compile(
          "(?=.{1,253}$)[a-z0-9]([a-z0-9-]*[a-z0-9])?(\\.[a-z0-9]([a-z0-9-]*[a-z0-9])?)*");

  /** More names than a computer in a darkroom has. */
  private static final int MOST_NAMES = 16;

  private static final String ADDRESSES =
      "a loopback address such as 127.0.0.1, or an address of this computer written in numbers";

  /** Reads the table. */
  static ServerTable read(Section table) throws ConfigRefused {
    String address = table.text("address", "127.0.0.1");
    if (!isLoopback(address) && !IPV4.matcher(address).matches() && !isIpv6(address)) {
      throw table.refuse("address", "'" + address + "'", ADDRESSES);
    }
    boolean said = table.flag("host_at_tray", true);
    Optional<Boolean> atTray =
        table.has("host_at_tray") ? Optional.of(said) : Optional.<Boolean>empty();
    ServerTable read =
        new ServerTable(
            address, table.whole("port", 8467, 0, 65_535), atTray, names(table), keystore(table));
    table.done();
    return read;
  }

  private static List<String> names(Section table) throws ConfigRefused {
    List<String> names = new ArrayList<>();
    for (String name : table.texts("names", MOST_NAMES)) {
      String lower = name.toLowerCase(Locale.ROOT);
      if (!NAME.matcher(lower).matches()) {
        throw table.refuse(
            "names", "'" + name + "'", "names of this computer, such as \"tray.local\"");
      }
      names.add(lower);
    }
    return List.copyOf(names);
  }

  private static Optional<Keystore> keystore(Section table) throws ConfigRefused {
    Optional<Path> password = file(table, "keystore_password_file");
    Optional<Path> file = file(table, "keystore");
    if (file.isEmpty() && password.isPresent()) {
      throw table.refuse("keystore", "nothing", "the file that keystore_password_file is for");
    }
    return file.map(f -> new Keystore(f, password));
  }

  private static Optional<Path> file(Section table, String key) throws ConfigRefused {
    String text = table.text(key, "");
    if (!table.has(key)) {
      return Optional.empty();
    }
    try {
      Path file = Path.of(text);
      if (java.nio.file.Files.isRegularFile(file)) {
        return Optional.of(file);
      }
    } catch (InvalidPathException e) {
      throw table.refuse(key, "'" + text + "'", "the path of a file");
    }
    throw table.refuse(key, "'" + text + "'", "the path of a file that exists");
  }

  private static boolean isLoopback(String address) {
    return LOOPBACK.matcher(address).matches();
  }

  private static boolean isIpv6(String address) {
    if (!MAYBE_IPV6.matcher(address).matches()) {
      return false;
    }
    try {
      return InetAddress.getByName(address).getAddress().length > 0;
    } catch (UnknownHostException e) {
      return false;
    }
  }

  /** Whether only programs of this computer reach the page. */
  public boolean loopback() {
    return isLoopback(address);
  }

  /** Whether who uses the page stands at the tray: so it is where nothing else is said. */
  public boolean hostAtTray() {
    return hostAtTray(true);
  }

  /**
   * The same with the default of a command.
   *
   * @param otherwise where the file says nothing
   */
  public boolean hostAtTray(boolean otherwise) {
    return atTray.orElse(otherwise);
  }
}
