package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Certificates that tests sign themselves, for this computer's own names. */
final class Keystores {

  private Keystores() {}

  /** A PKCS #12 file with a key and a certificate of its own, valid for a day. */
  static Path made(Path folder, String password) throws Exception {
    Path file = folder.resolve("page.p12");
    Process tool =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString(),
                "-genkeypair",
                "-alias",
                "page",
                "-keyalg",
                "EC",
                "-dname",
                "CN=localhost",
                "-ext",
                "SAN=dns:localhost,ip:127.0.0.1",
                "-validity",
                "1",
                "-storetype",
                "PKCS12",
                "-keystore",
                file.toString(),
                "-storepass",
                password)
            .redirectErrorStream(true)
            .start();
    String said = new String(tool.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, tool.waitFor(), said);
    return file;
  }
}
