package trayward.controller.safety;

import org.jspecify.annotations.Nullable;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;
import trayward.controller.safety.HeatStretch.Anchor;

/**
 * Watches the liquid in the tray by what was said, poured and evaporated, and by how fast the bath
 * warms under full heat (SR-28). A value; {@link #next} and {@link #told} return the following one.
 * Pure.
 *
 * @param model what is believed of the tray
 * @param room what is believed of the room
 * @param limits the shares at which it warns and withholds
 * @param book the liquid by the book
 * @param trail bath and plate under full heat
 * @param anchor the first heating rate since the level was said; null before
 * @param low a warning stands
 * @param unsure heat waits for a person to confirm the level
 */
public record LevelWatch(
    TrayModel model,
    RoomModel room,
    Limits limits,
    LevelBook book,
    HeatTrail trail,
    @Nullable Anchor anchor,
    boolean low,
    boolean unsure) {

  /** An estimate by the heating rate is good to this share: what may be too little counts so. */
  private static final double RATE_DOUBT = 0.1;

  /** A warning that stands goes when the missing share is smaller by this: no chatter. */
  private static final double CLEARS = 0.03;

  /** A tray as full as declared, at power-up. */
  public static LevelWatch start(TrayModel model, RoomModel room, Limits limits) {
    LevelBook book = LevelBook.said(model.liquidL());
    return new LevelWatch(model, room, limits, book, HeatTrail.START, null, false, false);
  }

  /** After one scan. */
  public LevelWatch next(ThermalInput in) {
    LevelBook now = book;
    if (in.bath().known()) {
      double bathC = in.bath().celsius();
      now = book.evaporated(model.evaporationW(bathC, room), bathC, in.elapsedS());
    }
    HeatTrail trailNow = trail.next(in, model, room);
    HeatStretch stretch = trailNow.stretch(model);
    LevelWatch next = with(now, trailNow, anchor);
    return stretch == null ? next : next.saw(stretch);
  }

  private LevelWatch saw(HeatStretch stretch) {
    LitreBounds seen = stretch.litres(anchor);
    if (anchor == null) {
      LitreBounds wide = seen.wider(LevelBook.SAID); // these are litres, and said is said
      return book.against(wide)
          ? with(book.seen(wide), trail, null)
          // What was said can be: from now on the rate is compared with this one.
          : with(book, trail, new Anchor(stretch, book.bestL()));
    }
    return with(book.seen(seen), trail, anchor);
  }

  /** What a person said, once it is {@link LevelTold#believable}. */
  public LevelWatch told(LevelTold told) {
    if (told instanceof LevelTold.Poured poured) {
      return with(book.poured(poured.litres()), HeatTrail.START, anchor);
    }
    double litres = told instanceof LevelTold.Holds holds ? holds.litres() : book.saidL();
    LevelBook fresh = LevelBook.said(litres);
    return new LevelWatch(model, room, limits, fresh, HeatTrail.START, null, false, false);
  }

  private LevelWatch with(LevelBook now, HeatTrail trailNow, @Nullable Anchor anchorNow) {
    double warns = limits.get(Limit.LEVEL_LOW_SHARE) - (low ? CLEARS : 0);
    boolean lowNow = now.missing() >= warns || now.surelyMissing() >= warns;
    double most = 1 - (1 - now.missing()) * (1 - (now.rated() ? RATE_DOUBT : 0));
    boolean unsureNow =
        most >= limits.get(Limit.LEVEL_UNSURE_SHARE)
            && now.surelyMissing() >= limits.get(Limit.LEVEL_LOW_SHARE);
    return new LevelWatch(
        model, room, limits, now, trailNow, anchorNow, lowNow, unsure || unsureNow);
  }

  /** The level in a word. */
  public Level level() {
    return unsure ? Level.UNSURE : low ? Level.LOW : Level.WELL;
  }

  /** What is thought of the liquid. */
  public LevelEstimate estimate() {
    double least = book.lowL() * (1 - LevelBook.SAID);
    double most = book.highL() * (1 + LevelBook.SAID);
    return new LevelEstimate(level(), book.bestL(), least, most, book.addL());
  }
}
