package trayward.host.app;

import trayward.controller.app.BookTable;
import trayward.controller.app.Settings;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;
import trayward.host.bath.Amount;
import trayward.host.bath.PrintUse;
import trayward.host.bath.Vapour;
import trayward.host.heat.PoolEvaporation;
import trayward.host.store.BookModel;

/** What the bath book reckons with, out of a configuration. Stateless. */
final class BookSettings {

  /** A give or take of the settings is of a coverage factor of 2. */
  private static final double COVERAGE = 2;

  private BookSettings() {}

  static BookModel of(Settings settings) {
    TrayModel tray = settings.model();
    RoomModel room = settings.room();
    BookTable book = settings.book();
    PoolEvaporation surface =
        new PoolEvaporation(
            tray.areaM2(),
            room.draughtMPerS(),
            room.airC(),
            room.relativeHumidity(),
            tray.evaporationFactor());
    return new BookModel(
        new PrintUse(
            new Amount(book.silverGPerM2(), book.silverDoubtGPerM2() / COVERAGE),
            new Amount(book.carryOutMlPerM2(), book.carryOutDoubtMlPerM2() / COVERAGE)),
        new Vapour(surface::millilitresPerHourAt, book.vapourDoubt() / COVERAGE));
  }
}
