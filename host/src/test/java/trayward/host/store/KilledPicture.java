package trayward.host.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import trayward.host.session.MarkKind;

/** A process of its own that has half a picture, says so, and waits to be killed. */
final class KilledPicture {

  private KilledPicture() {}

  /** Takes the folder. */
  public static void main(String[] arguments) throws LogRefused, IOException {
    byte[] file = PictureScenes.jpeg(800, 600);
    try (TrayLog log = LogFile.open(Path.of(arguments[0]))) {
      LogScenes.marked(log, MarkKind.IN, log.startSession(LogScenes.EVENING, true), 10);
      InputStream half =
          new InputStream() {
            private int at;

            @Override
            public int read() throws IOException {
              if (at == file.length / 2) {
                System.out.println("half a picture");
                int end = System.in.read();
                System.out.println("not killed: " + end);
              }
              return file[at++] & 0xFF;
            }

            @Override
            public int read(byte[] into, int from, int length) throws IOException {
              into[from] = (byte) read();
              return 1;
            }
          };
      var unused = log.pictures().add(1, half, LogScenes.EVENING);
    }
  }
}
