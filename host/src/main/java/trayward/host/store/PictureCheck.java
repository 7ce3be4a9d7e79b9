package trayward.host.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import trayward.host.bath.Problem;

/** Whether the file of a picture is what its row says. Stateless. */
final class PictureCheck {

  private PictureCheck() {}

  /** What is wrong with the file, read up to the end of its image. */
  static Optional<Problem> problem(LogRow row, Path file) {
    try {
      if (!Files.isRegularFile(file)) {
        return bad("file", row.text("file") + " missing", "the file in the folder of pictures");
      }
      long bytes = Files.size(file);
      if (bytes != row.whole("bytes")) {
        return bad("bytes", Long.toString(bytes), row.whole("bytes") + ", as it was brought in");
      }
      PictureCore core = PictureCore.read(file);
      boolean same =
          core.type().equals(row.text("type"))
              && core.width() == row.whole("width")
              && core.height() == row.whole("height");
      return same
          ? Optional.empty()
          : bad(
              "file",
              core.type() + " " + core.width() + " x " + core.height(),
              row.text("type") + " " + row.whole("width") + " x " + row.whole("height"));
    } catch (NoPicture e) {
      return bad("file", row.text("file") + ": " + e.why(), "a JPEG or PNG picture");
    } catch (IOException e) {
      return bad("file", String.valueOf(e.getMessage()), "a file that can be read");
    }
  }

  private static Optional<Problem> bad(String field, String found, String accepted) {
    return Optional.of(new Problem(field, found, accepted));
  }
}
