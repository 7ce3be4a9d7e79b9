package trayward.controller.safety;

import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import trayward.controller.event.TripCause;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/**
 * Watches that heat goes where it is commanded, by the physics of the tray: dry or lifted tray
 * (SR-07), frozen probes (SR-08), heat that does not arrive (SR-10) or arrives uncommanded (SR-11).
 * A value; {@link #next} returns the following one. Pure.
 *
 * @param model what is believed of the tray
 * @param room what is believed of the room
 * @param heat commanded heat through time
 * @param bath newest bath readings
 * @param plate newest plate readings
 * @param bank trays the plate readings still allow; null outside of a run
 * @param look a plate too hot is being looked at; null where none is
 * @param known what is known beside this run's readings
 * @param frozen whether the bath reading stands still
 * @param plateSpan the same value of the plate probe
 * @param offRise plate rising with heat off
 * @param account heat that no reading answers
 * @param blind a look at the bath where no plate is seen
 * @param named what was found and is still told
 * @param toldS how long that has been told, s
 */
public record TrayWatch(
    TrayModel model,
    RoomModel room,
    HeatLag heat,
    ReadingTrail bath,
    ReadingTrail plate,
    @Nullable PlateBank bank,
    @Nullable PlateLook look,
    PlateMemory known,
    FrozenBath frozen,
    ConstantSpan plateSpan,
    OffRise offRise,
    BlindAccount account,
    BlindLook blind,
    @Nullable TripCause named,
    double toldS) {

  /** A finding is told this long, s: the interlock latches it in the next scan. */
  private static final double TELL_S = 5;

  /** Readings further apart than this are no course, s: stale probes trip by themselves. */
  private static final double GAP_S = 5;

  /** A bath reading that has stood so long through a look tells nothing of the bath, s. */
  private static final double STOOD_S = 120;

  /** A watch that has seen nothing. */
  public static TrayWatch start(TrayModel model, RoomModel room) {
    return new TrayWatch(
        model,
        room,
        HeatLag.START,
        ReadingTrail.START,
        ReadingTrail.START,
        null,
        null,
        PlateMemory.START,
        FrozenBath.START,
        ConstantSpan.START,
        OffRise.START,
        BlindAccount.START,
        BlindLook.START,
        null,
        0);
  }

  /** What the interlock should know in this scan. */
  public Set<TripCause> findings() {
    // With a plate to look at, the look tells a frozen reading from a dry tray, and names it.
    boolean stuck = !plate.full() && frozen.found(model, room, Double.NaN);
    if (named == null) {
      return stuck ? Set.of(TripCause.BATH_PROBE_BAD) : Set.of();
    }
    return stuck ? EnumSet.of(named, TripCause.BATH_PROBE_BAD) : Set.of(named);
  }

  /** Heat is to be held off for a look at the plate, or to see the bath reading move. */
  public boolean looking() {
    return look != null || frozen.pokes() || blind.looking() || waits();
  }

  /** A plate too cold stands still: what it holds is awaited in the bath, with no more heat. */
  private boolean waits() {
    return bank != null && bank.side() < 0 && ColdPlate.holdsOff(plateSpan);
  }

  /** After one scan. */
  public TrayWatch next(ThermalInput in) {
    HeatLag heatNow = heat.next(in.heatCommanded(), in.elapsedS());
    ReadingTrail bathNow = bath.next(in.bath());
    ReadingTrail plateNow = plate.next(in.plate());
    boolean seesPlate = in.plate().known();
    BlindAccount accountNow = account.next(in, heatNow, model, room);
    BlindLook blindNow = blind.next(in, !accountNow.decides(), model, room);
    OffRise riseNow = seesPlate ? offRise.next(heatNow, plateNow, bathNow) : OffRise.START;
    boolean reading = plate.news(in.plate());
    PlateBank bankNow = reading ? bankAfter(in, heatNow, bathNow, plateNow) : bank;
    PlateMemory knownNow =
        known.next(
            in,
            bath.news(in.bath()),
            bathNow,
            frozen.span(),
            plateSpan,
            bank,
            bankNow,
            model,
            room);
    boolean rests = named == null && !in.state().inRun() && in.state() != State.LOCKOUT;
    ConstantSpan plateSpanThen = rests ? plateSpan.anew() : plateSpan; // each run has its own heat
    ConstantSpan plateSpanNow =
        plateSpanThen.next(
            in.plate().celsius(), in.elapsedS(), knownNow.bathRoseK(in), in.heatCommanded());
    PlateLook lookNow = lookAfter(in, heatNow, bathNow, plateNow, bankNow, knownNow, plateSpanNow);
    boolean anew =
        (lookNow != null && lookNow.tooNear(bathNow.median()))
            || (in.state().purged()
                && !ColdPlate.stands(plateSpanNow)
                && bankNow != null
                && bankNow.side() < 0
                && HeatedPlate.is(model, room, bathNow, plateNow));
    if (anew && bankNow != null) {
      bankNow = PlateBank.start(model, plateNow.median());
      lookNow = null;
    }
    TripCause found =
        cause(
            in,
            heatNow,
            accountNow,
            blindNow,
            riseNow,
            knownNow,
            lookNow,
            bathNow,
            plateNow,
            plateSpanNow,
            bankNow);
    if (found != null || named != null) {
      bankNow = null; // what follows a fault is judged afresh
      lookNow = null;
    }
    TripCause told = found != null ? found : goesOn() ? named : null;
    return new TrayWatch(
        model,
        room,
        reading ? heatNow.taken() : heatNow,
        bathNow,
        plateNow,
        bankNow,
        lookNow,
        knownNow,
        frozen.next(in, bathNow.slope(), model),
        plateSpanNow,
        riseNow,
        found != null ? BlindAccount.START : accountNow,
        found != null ? BlindLook.START : blindNow,
        told,
        found != null ? 0 : toldS + in.elapsedS());
  }

  /** A probe found frozen stays so until its reading moves. */
  private boolean goesOn() {
    return toldS < TELL_S
        || (named == TripCause.BATH_PROBE_BAD && frozen.span().ageS() > toldS)
        || (named == TripCause.PLATE_PROBE_BAD && plateSpan.ageS() > toldS);
  }

  private @Nullable PlateBank bankAfter(
      ThermalInput in, HeatLag heatNow, ReadingTrail bathNow, ReadingTrail plateNow) {
    boolean can = in.state().inRun() && bathNow.full() && plateNow.full();
    if (!can || plateNow.stepS() > GAP_S) {
      return null;
    }
    boolean restless = !in.state().purged() && PlateMemory.restless(heatNow, bathNow, plateNow);
    if (bank == null
        || restless
        || plateNow.thaws()
        || (bank.side() != 0 && !in.state().purged())) {
      return PlateBank.start(model, plateNow.median());
    }
    return bank.next(plateNow.stepS(), heatNow, bathNow, plateNow.median(), room);
  }

  private @Nullable PlateLook lookAfter(
      ThermalInput in,
      HeatLag heatNow,
      ReadingTrail bathNow,
      ReadingTrail plateNow,
      @Nullable PlateBank bankNow,
      PlateMemory knownNow,
      ConstantSpan plateSpanNow) {
    if (bankNow == null || !in.state().purged()) {
      return null;
    }
    boolean still =
        look != null ? frozen.stands() : frozen.found(model, room, bankNow.leastWPerK());
    if (bankNow.side() <= 0 && !still) {
      return null;
    }
    boolean stood = plateSpanNow.outlasts();
    if (look != null) {
      return look.next(heatNow, plateNow.median(), in.elapsedS(), stood);
    }
    double cooling = Math.max(bank == null ? 0 : bank.coolingPerS(), knownNow.coolingPerS());
    boolean falls = bathNow.fallsBeyond(model, room) || knownNow.bathFell();
    return PlateLook.begin(cooling, falls, bankNow.side() <= 0, stood);
  }

  private @Nullable TripCause cause(
      ThermalInput in,
      HeatLag heatNow,
      BlindAccount accountNow,
      BlindLook blindNow,
      OffRise riseNow,
      PlateMemory knownNow,
      @Nullable PlateLook lookNow,
      ReadingTrail bathNow,
      ReadingTrail plateNow,
      ConstantSpan plateSpanNow,
      @Nullable PlateBank bankNow) {
    if (riseNow.found(plateNow.median(), in.state()) || accountNow.rises(in)) {
      return TripCause.RELAY_STUCK;
    }
    boolean tooHot = bankNow != null && bankNow.side() > 0;
    if (frozen.pokedInVain(model) || (frozen.pokes() && tooHot)) {
      return tooHot ? TripCause.BATH_PROBE_BAD : frozen.name();
    }
    if (lookNow != null) {
      return lookNow.cause(
          plateNow.median(),
          bathNow.median(),
          room.airC(),
          knownNow.inLiquid(bathNow.median(), frozen.span()),
          plateSpanNow,
          frozen.span());
    }
    if (bankNow != null && bankNow.side() < 0 && in.state().purged()) {
      return ColdPlate.cause(
          plateNow.median(),
          bathNow.median(),
          room.airC(),
          heatNow.offS(),
          knownNow.leaves(plateNow, bathNow),
          plateSpanNow,
          frozen.span());
    }
    if (blindNow.heated() && frozen.span().ageS() < STOOD_S) {
      return TripCause.RELAY_STUCK;
    }
    if (!accountNow.unanswered() && !blindNow.failed()) {
      return null;
    }
    return knownNow.secondMoved(in) ? TripCause.BATH_PROBE_BAD : frozen.name();
  }
}
