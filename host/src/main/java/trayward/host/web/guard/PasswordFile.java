package trayward.host.web.guard;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** The file that keeps the hash of the page's password, for its owner's eyes only. One thread. */
public final class PasswordFile {

  /** In the folder of the log. */
  public static final String NAME = "page-password.txt";

  /** One line and no more: nothing longer is read. */
  private static final int MOST_BYTES = 1024;

  private static final Set<PosixFilePermission> OWNER_ONLY =
      EnumSet.of(PosixFilePermission.OWNER_READ, PosixFilePermission.OWNER_WRITE);

  private final Path file;

  /** The file in a folder. */
  public PasswordFile(Path folder) {
    file = folder.resolve(NAME);
  }

  /** Where it is. */
  public Path path() {
    return file;
  }

  /** Keeps a hash: whole or not at all, mode 0600 from its first byte on. */
  public void write(PasswordHash hash) throws IOException {
    Files.createDirectories(file.toAbsolutePath().getParent());
    Path fresh = file.resolveSibling(NAME + ".part");
    Files.deleteIfExists(fresh);
    Files.createFile(fresh, PosixFilePermissions.asFileAttribute(OWNER_ONLY));
    Files.writeString(fresh, hash.text() + "\n", StandardCharsets.US_ASCII);
    Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /**
   * The hash that is kept; empty where there is no file.
   *
   * @throws Unusable where the file cannot be relied on
   */
  public Optional<PasswordHash> read() throws Unusable {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    try {
      if (!OWNER_ONLY.containsAll(Files.getPosixFilePermissions(file))) {
        throw new Unusable(
            file + ": found a file that others may read or write, accepted is one of mode 0600");
      }
      boolean small = Files.size(file) <= MOST_BYTES;
      String text = small ? Files.readString(file, StandardCharsets.ISO_8859_1).strip() : "";
      Optional<PasswordHash> hash = PasswordHash.parse(text);
      if (hash.isEmpty()) {
        throw new Unusable(
            file + ": found no password, accepted is what trayward password writes there");
      }
      return hash;
    } catch (IOException e) {
      throw new Unusable(file + ": cannot be read: " + e.getMessage());
    }
  }

  /** A password file that cannot be relied on; nobody is let in by it. */
  public static final class Unusable extends Exception {
    private static final long serialVersionUID = 1L;

    Unusable(String message) {
      super(message);
    }
  }
}
