package trayward.host.app.demo;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import trayward.host.bath.BookEntry;
import trayward.host.bath.Checked;
import trayward.host.bath.EntryKind;
import trayward.host.session.MarkKind;
import trayward.host.session.Moment;
import trayward.host.session.Print;
import trayward.host.session.Session;
import trayward.host.session.TraceSample;
import trayward.host.store.BathBook;
import trayward.host.store.MarkResult;
import trayward.host.store.TrayLog;

/** An open invented session: its time, its trace, its marks and its bath. One thread. */
final class Tray {

  private final TrayLog log;
  private final Session session;
  private final BathCourse course;
  private final List<TraceSample> unwritten = new ArrayList<>();
  private double nowS;
  private long bath;

  Tray(TrayLog log, Instant wall, Random random, double setC) {
    this.log = log;
    this.session = log.startSession(wall, true);
    this.course = new BathCourse(random, setC);
  }

  Session session() {
    return session;
  }

  BathCourse course() {
    return course;
  }

  double nowS() {
    return nowS;
  }

  long bath() {
    return bath;
  }

  Instant wall(double sessionS) {
    return session.startedWall().plusMillis(Math.round(1000 * sessionS));
  }

  /** One second of trace; gives the bath's temperature, °C. */
  double second() {
    nowS++;
    double bathC = course.next();
    String state = course.setC() - bathC > 0.5 ? "HEATING" : "HOLDING";
    unwritten.add(
        new TraceSample(nowS, bathC, course.plateC(), course.setC(), course.duty(), state, true));
    return bathC;
  }

  void waits(double seconds) {
    for (double end = nowS + seconds; nowS < end; ) {
      second();
    }
  }

  /** A mark at a moment that has passed, no further back than a second; gives its print. */
  Print mark(MarkKind kind, double atS) {
    write();
    MarkResult result =
        log.mark(
            kind,
            session.id(),
            new Moment(atS, wall(atS)),
            "pedal",
            OptionalDouble.of(course.bathC()));
    if (result instanceof MarkResult.Marked marked) {
      return marked.print();
    }
    throw new IllegalStateException("the invented season broke the rule of marks: " + result);
  }

  void takeBack() {
    log.undoLastMark(session.id(), wall(nowS));
  }

  /** Makes a bath of a litre, some of it the bath before. */
  void make(String name, int partsWater, double oldMl, double bromideMl) {
    Instant wall = wall(nowS);
    double part = (1000 - oldMl) / (2 + partsWater);
    List<BookEntry> parts = new ArrayList<>();
    parts.add(poured("water", partsWater * part));
    parts.add(poured(Scenery.PART_A, part));
    parts.add(poured(Scenery.PART_B, part));
    if (oldMl > 0) {
      long before = log.baths().inTray().orElseThrow().id();
      parts.add(
          poured("the bath before", oldMl).as(EntryKind.CARRIED_OVER, OptionalLong.of(before)));
    }
    if (bromideMl > 0) {
      parts.add(poured("bromide 10 %", bromideMl));
    }
    BathBook.Now now = new BathBook.Now(wall, nowS);
    String note = "1+1+" + partsWater + ". Invented.";
    bath = good(log.baths().make(now, name, 0, note, parts)).bath().id();
  }

  /** Pours something into the bath now. */
  BookEntry pour(String what, double millilitres) {
    write();
    return good(log.baths().enter(new BathBook.Now(wall(nowS), nowS), poured(what, millilitres)));
  }

  private BookEntry poured(String what, double millilitres) {
    return BookEntry.poured(0, bath, wall(nowS), nowS, what, Math.rint(10 * millilitres) / 10);
  }

  void end() {
    write();
    log.endSession(session.id(), wall(nowS), Season.ENDING);
  }

  private void write() {
    log.addTrace(session.id(), unwritten);
    unwritten.clear();
  }

  /** What the log took. */
  static <T> T good(Checked<T> checked) {
    if (checked instanceof Checked.Good<T> good) {
      return good.value();
    }
    throw new IllegalStateException("the invented season was refused: " + checked);
  }
}
