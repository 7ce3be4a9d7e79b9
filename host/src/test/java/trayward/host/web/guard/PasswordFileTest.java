package trayward.host.web.guard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How the page's password is kept. */
class PasswordFileTest {

  @TempDir Path folder;

  private PasswordFile.Unusable unusable(PasswordFile file) {
    return assertThrows(PasswordFile.Unusable.class, file::read);
  }

  @Test
  void whatIsKeptIsTheStretchedPasswordForItsOwnerAlone() throws Exception {
    PasswordFile file = new PasswordFile(folder.resolve("data"));
    assertEquals(Optional.empty(), file.read());
    file.write(PasswordHash.of("correct horse".toCharArray(), new SecureRandom()));
    assertEquals(
        "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file.path())));
    String text = Files.readString(file.path());
    assertTrue(text.startsWith("pbkdf2-hmac-sha256 600000 "), text);
    assertFalse(text.contains("horse"), text);
    PasswordHash kept = file.read().orElseThrow();
    assertTrue(kept.matches("correct horse".toCharArray()));
    assertFalse(kept.matches("correct hors".toCharArray()));
    assertFalse(kept.matches("correct horsf".toCharArray()));
  }

  @Test
  void aFileThatOthersMayReadLetsNobodyIn() throws Exception {
    PasswordFile file = new PasswordFile(folder);
    file.write(PasswordHash.of("correct horse".toCharArray(), new SecureRandom()));
    Files.setPosixFilePermissions(file.path(), PosixFilePermissions.fromString("rw-r-----"));
    assertTrue(String.valueOf(unusable(file).getMessage()).contains("0600"));
  }

  @Test
  void aFileThatSaysNothingOrTooLittleLetsNobodyIn() throws Exception {
    PasswordFile file = new PasswordFile(folder);
    file.write(PasswordHash.of("correct horse".toCharArray(), new SecureRandom()));
    String text = Files.readString(file.path());
    for (String wrong :
        new String[] {
          "",
          "correct horse",
          text.replace("600000", "1000"),
          text.replace("600000", "999999999"),
          text.substring(0, 40),
          text + "x".repeat(5000)
        }) {
      Files.writeString(file.path(), wrong);
      assertTrue(String.valueOf(unusable(file).getMessage()).contains("no password"), wrong);
    }
  }

  @Test
  void theSamePasswordIsKeptDifferentlyEachTime() {
    SecureRandom random = new SecureRandom();
    char[] password = "correct horse".toCharArray();
    String one = PasswordHash.of(password, random).text();
    assertFalse(one.equals(PasswordHash.of(password, random).text()));
  }
}
