package trayward.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A note that is printed from a table in code and must say the same. */
public final class PrintedNote {

  private PrintedNote() {}

  /** Fails where they differ; with {@code -Dtrayward.print=true} the note is printed anew first. */
  public static void assertSays(String printed, Path note) throws IOException {
    if (Boolean.getBoolean("trayward.print")) {
      Files.writeString(note, printed);
    }
    assertEquals(printed, Files.readString(note), "print it anew with -Dtrayward.print=true");
  }
}
