package trayward.host.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** An invented darkroom for tests of the white-light pages. Stateless. */
final class WhiteScenes {

  private WhiteScenes() {}

  /** The program with a cold simulated tray, whose fan rests. */
  static RunningTrayward trayward(Path folder) throws IOException {
    Path config =
        Files.writeString(
            folder.resolve("white.toml"),
            """
            [tray]
            start_c = 20
            liquid_l = 0.5
            [server]
            port = 0
            [log]
            folder = "%s/data"
            """
                .formatted(folder));
    return RunningTrayward.start(config);
  }

  /** Sends a body in which ' stands for ", and expects it to be carried out. */
  static void told(RunningTrayward trayward, String method, String path, String body)
      throws Exception {
    HttpResponse<String> answer = trayward.send(method, path, body.replace('\'', '"'));
    assertEquals(2, answer.statusCode() / 100, path + ": " + answer.body());
  }

  /** Two parts of a concentrate, and a make-up of them called so. */
  static void shelf(RunningTrayward trayward, String makeUp) throws Exception {
    String part = "{'kind': 'concentrate', 'name': 'Part %s', 'fields': {'bromide_g_per_l': 4}}";
    told(trayward, "POST", "/api/shelf", part.formatted("A"));
    told(trayward, "POST", "/api/shelf", part.formatted("B"));
    told(
        trayward,
        "POST",
        "/api/shelf",
        ("{'kind': 'make-up', 'name': '%s', 'fields':"
                + " {'litres': 0.5, 'concentrates': 'Part A, Part B', 'dilution': '1+1+20'}}")
            .formatted(makeUp));
  }

  /** A print, in the developer for two seconds or somewhat more. */
  static void print(RunningTrayward trayward, String title) throws Exception {
    told(trayward, "POST", "/api/prints", "{'title': '" + title + "'}");
    trayward.await(s -> s.path("current_print").path("elapsed_s").asDouble() > 1.2);
    told(trayward, "POST", "/api/marks", "{'kind': 'emergence'}");
    trayward.await(s -> s.path("current_print").path("elapsed_s").asDouble() > 2.4);
    told(trayward, "POST", "/api/marks", "{'kind': 'pull'}");
    trayward.await(s -> s.path("current_print").isNull());
  }

  /** A picture as a camera might give it: a pale sky over dark land. */
  static Path picture(Path folder) throws IOException {
    BufferedImage image = new BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB);
    Graphics2D draw = image.createGraphics();
    draw.setPaint(new GradientPaint(0, 0, new Color(235, 222, 200), 0, 480, new Color(90, 70, 50)));
    draw.fillRect(0, 0, 640, 480);
    draw.setPaint(new Color(25, 20, 17));
    draw.fillPolygon(
        new int[] {0, 210, 400, 640, 640, 0}, new int[] {330, 210, 350, 260, 480, 480}, 6);
    draw.dispose();
    Path file = folder.resolve("print.png");
    ImageIO.write(image, "png", file.toFile());
    return file;
  }
}
