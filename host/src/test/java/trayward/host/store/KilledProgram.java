package trayward.host.store;

import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.marked;
import static trayward.host.store.LogScenes.samples;

import java.io.IOException;
import java.nio.file.Path;
import trayward.host.session.MarkKind;
import trayward.host.session.Session;

/** A process of its own that begins a print, says so, and waits to be killed. */
final class KilledProgram {

  private KilledProgram() {}

  /** Takes the folder. */
  public static void main(String[] arguments) throws LogRefused, IOException {
    try (TrayLog log = LogFile.open(Path.of(arguments[0]))) {
      Session session = log.startSession(EVENING, true);
      marked(log, MarkKind.IN, session, 10);
      log.addTrace(session.id(), samples(0, 100));
      System.out.println("print begun");
      int end = System.in.read();
      System.out.println("not killed: " + end);
    }
  }
}
