package trayward.host.deb;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The Debian package, installed, run, upgraded, removed and purged in a folder that stands for a
 * system. It needs dpkg, systemd's tools, root, and {@code mvn package} before it.
 */
@Tag("full")
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class InstallTest {

  private static final Path PACKAGE = Path.of("target", "trayward.deb").toAbsolutePath();
  private static final Pattern EXPOSURE = Pattern.compile("exposure level .*: ([0-9.]+) ");

  /** What {@code systemd-analyze security} calls well protected is below 2.0, on a scale to 10. */
  private static final double MOST_EXPOSED = 2.0;

  private static final HttpClient HTTP = HttpClient.newHttpClient();

  @TempDir private Path folder;
  private TestRoot root;
  private final List<Process> running = new ArrayList<>();

  @BeforeEach
  void installed() throws Exception {
    assumeTrue(Files.exists(PACKAGE), "mvn package has not been run");
    assumeTrue(TestRoot.has("dpkg") && TestRoot.has("systemd-sysusers"), "no dpkg or no systemd");
    assumeTrue(System.getProperty("user.name").equals("root"), "dpkg asks for root");
    root = new TestRoot(Files.createDirectory(folder.resolve("root")));
    root.dpkg("--install", PACKAGE.toString());
  }

  @AfterEach
  void nothingIsLeftRunning() throws Exception {
    for (Process process : running) {
      process.destroyForcibly().waitFor();
    }
    running.clear();
  }

  private String mode(String path) throws IOException {
    Map<String, Object> of = Files.readAttributes(root.at(path), "unix:permissions,uid,gid");
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(root.at(path)))
        + " "
        + of.get("uid")
        + " "
        + of.get("gid");
  }

  @Test
  void everythingBelongsToRootAndOnlyProgramsMayBeExecuted() throws Exception {
    for (String file :
        List.of(
            "/usr/share/trayward/trayward.jar",
            "/usr/lib/systemd/system/trayward-controller.service",
            "/etc/trayward/controller.toml",
            "/usr/share/doc/trayward/examples/controller-pi-lines.toml")) {
      assertEquals("rw-r--r-- 0 0", mode(file), file);
    }
    for (String file :
        List.of("/usr/bin/trayward", "/usr/share/trayward/make-archives", "/etc/trayward")) {
      assertEquals("rwxr-xr-x 0 0", mode(file), file);
    }
  }

  @Test
  void eachHalfHasAUserOfItsOwnWithoutAShellInTheGroupsItNeedsAndNoOther() throws Exception {
    String users = Files.readString(root.at("/etc/passwd"));
    assertEquals(2, users.lines().filter(line -> line.endsWith("/usr/sbin/nologin")).count());
    List<String> groups = Files.readAllLines(root.at("/etc/group"));
    assertTrue(groups.stream().anyMatch(g -> g.matches("gpio:x:\\d+:trayward-controller")));
    assertTrue(
        groups.stream()
            .anyMatch(g -> g.matches("dialout:x:\\d+:trayward-controller,trayward-host")));
    assertEquals(
        2, groups.stream().filter(g -> g.contains(":trayward-")).count(), groups.toString());
  }

  @Test
  void systemdFindsNothingWrongWithTheUnitsAndCallsThemWellProtected() throws Exception {
    assumeTrue(TestRoot.has("systemd-analyze") && TestRoot.has("java"), "nothing to ask");
    for (String half : List.of("controller", "host")) {
      String unit = root.at("/usr/lib/systemd/system/trayward-" + half + ".service").toString();
      assertEquals("", TestRoot.run(List.of("systemd-analyze", "verify", "--man=no", unit)));
      String judged = TestRoot.run(List.of("systemd-analyze", "security", "--offline=true", unit));
      Matcher exposure = EXPOSURE.matcher(judged);
      assertTrue(exposure.find(), judged);
      System.out.println("systemd-analyze security, " + half + ": " + exposure.group(1));
      assertTrue(Double.parseDouble(exposure.group(1)) < MOST_EXPOSED, judged);
    }
  }

  @Test
  void anUpgradeKeepsDataAndWhatWasSetAndPurgeLeavesTheLogAndTheRecord() throws Exception {
    Path log = data("/var/lib/trayward-host/trayward-log.db");
    Path keep = data("/var/lib/trayward-controller/controller-keep.txt");
    Path mine =
        Files.writeString(root.at("/etc/trayward/controller.toml"), "# mine\n[io]\nkind=\"sim\"\n");
    root.dpkg("--force-confdef", "--install", PACKAGE.toString());
    assertTrue(Files.readString(mine).startsWith("# mine"), "what a person set was replaced");
    assertEquals("years", Files.readString(log));
    root.dpkg("--remove", "trayward");
    assertTrue(Files.exists(mine), "removal keeps the configuration");
    assertFalse(Files.exists(root.at("/usr/share/trayward/trayward.jar")));
    String said = root.dpkg("--purge", "trayward");
    assertFalse(Files.exists(mine), "purge takes the configuration");
    assertTrue(said.contains("were left"), said);
    assertEquals("years", Files.readString(log));
    assertEquals("years", Files.readString(keep));
  }

  private Path data(String path) throws IOException {
    Files.createDirectories(root.at(path).getParent());
    return Files.writeString(root.at(path), "years");
  }

  @Test
  void asInstalledTheTwoHalvesFindEachOtherAndThePageComesWithArchivesOfClassesAndWithout()
      throws Exception {
    int link;
    int page;
    try (ServerSocket one = anyPort();
        ServerSocket other = anyPort()) { // both at once, or they might be one
      link = one.getLocalPort();
      page = other.getLocalPort();
    }
    for (String half : List.of("controller", "host")) {
      Path config = root.at("/etc/trayward/" + half + ".toml");
      Files.writeString(
          config,
          Files.readString(config)
              .replace("tcp_port = 1502", "tcp_port = " + link)
              .replace("port = 8467", "port = " + page)
              .replace("\"/var/lib/", "\"" + root.at("/var/lib") + "/"));
    }
    String plain = awaitBath(page);
    nothingIsLeftRunning();
    TestRoot.run(
        List.of(
            root.at("/usr/share/trayward/make-archives").toString(),
            root.at("/usr/share/trayward/trayward.jar").toString(),
            root.at("/var/cache/trayward").toString()));
    for (String half : List.of("controller", "host")) {
      assertTrue(Files.size(root.at("/var/cache/trayward/" + half + ".jsa")) > 1_000_000, half);
    }
    System.out.println("to the page: " + plain + ", with archives: " + awaitBath(page));
  }

  private static ServerSocket anyPort() throws IOException {
    return new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
  }

  /** Starts both as their units do; how long it took until the page knew the bath, in words. */
  private String awaitBath(int page) throws Exception {
    long began = System.nanoTime();
    for (String half : List.of("controller", "host")) {
      running.add(
          new ProcessBuilder(root.start(half))
              .directory(folder.toFile())
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve(half + ".log").toFile())
              .start());
    }
    URI status = URI.create("http://127.0.0.1:" + page + "/api/status");
    long pageMs = 0;
    while (true) { // the test's own time-out bounds it
      try {
        HttpResponse<String> answer =
            HTTP.send(HttpRequest.newBuilder(status).build(), HttpResponse.BodyHandlers.ofString());
        if (pageMs == 0) {
          pageMs = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began);
        }
        if (answer.body().contains("\"bath_c\":19.") || answer.body().contains("\"bath_c\":20.")) {
          return pageMs + " ms";
        }
      } catch (IOException e) {
        assertTrue(running.stream().allMatch(Process::isAlive), "a half ended: see " + folder);
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(20));
    }
  }
}
