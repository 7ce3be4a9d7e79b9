package trayward.controller.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import trayward.controller.Verifies;
import trayward.controller.Verifies.Side;
import trayward.controller.event.TripCause;
import trayward.controller.regulate.RoomModel;
import trayward.controller.regulate.TrayModel;

/** The watch over heat in single scans: how its parts are put together. */
class TrayWatchStepTest {

  private static final TrayModel TRAY = TrayModel.REFERENCE;
  private static final long SECOND = 1_000_000_000L;

  /** Nine readings of one value, the newest at 9 s. */
  private static final ReadingTrail FORTY = trail(40);

  private static ReadingTrail trail(double celsius) {
    ReadingTrail trail = ReadingTrail.START;
    for (int s = 1; s <= 9; s++) {
      trail = trail.next(new ThermalInput.Sample(celsius, s * SECOND));
    }
    return trail;
  }

  /** Whose candidates have all ended on one side, long ago. */
  private static PlateBank ended(int side) {
    PlateRow low = PlateRow.of(Double.POSITIVE_INFINITY);
    PlateRow high = PlateRow.of(Double.NEGATIVE_INFINITY);
    PlateRow plates = PlateRow.of(40);
    return new PlateBank(TRAY, plates, Row.of(PlateGrid.TIMES, 0), low, high, 1e6, side, 0);
  }

  /** A value that stood for {@code ageS}; a second half with {@code moreJ} more heat. */
  private static ConstantSpan stood(double ageS, double moreJ) {
    double[] sums = new double[64];
    sums[2] = moreJ;
    return new ConstantSpan(40, ageS, 0, 0, 0, 0, 0, 0, 1e9, Row.owning(sums), 3, moreJ);
  }

  private static FrozenBath frozen(double ageS, double moreJ, double pokedS) {
    return new FrozenBath(stood(ageS, moreJ), 40, pokedS, 0.5, 0);
  }

  private static final FrozenBath LIVE = frozen(5, 0, 0);

  private static TrayWatch watch(
      ReadingTrail plate, @Nullable PlateBank bank, @Nullable PlateLook look, FrozenBath frozen) {
    return told(plate, bank, look, frozen, LIVE.span(), null, 0);
  }

  private static TrayWatch told(
      ReadingTrail plate,
      @Nullable PlateBank bank,
      @Nullable PlateLook look,
      FrozenBath frozen,
      ConstantSpan plateSpan,
      @Nullable TripCause named,
      double toldS) {
    return new TrayWatch(
        TRAY,
        RoomModel.REFERENCE,
        HeatLag.START,
        FORTY,
        plate,
        bank,
        look,
        PlateMemory.START,
        frozen,
        plateSpan,
        OffRise.START,
        BlindAccount.START,
        BlindLook.START,
        named,
        toldS);
  }

  /** A tenth of a second, with the readings of 10 s or still those of 9 s. */
  private static TrayWatch scan(TrayWatch watch, State state, boolean news) {
    long taken = news ? 10 * SECOND : 9 * SECOND;
    ThermalInput.Sample bath = new ThermalInput.Sample(40, taken);
    boolean seesPlate = watch.plate().full();
    ThermalInput.Sample plate =
        seesPlate
            ? new ThermalInput.Sample(watch.plate().median(), taken)
            : ThermalInput.Sample.NONE;
    return watch.next(new ThermalInput(0.1, false, state, bath, plate));
  }

  private static final double HIDDEN_J = 4180 * 2.6 / 6;

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aReadingThatHidesHeatIsNamedAtOnceOnlyWhereNoPlateCanBeLookedAt() {
    FrozenBath hides = frozen(30, HIDDEN_J + 1, 0);
    assertEquals(
        Set.of(TripCause.BATH_PROBE_BAD), watch(ReadingTrail.START, null, null, hides).findings());
    assertEquals(Set.of(), watch(FORTY, null, null, hides).findings());
    assertEquals(Set.of(), watch(ReadingTrail.START, null, null, LIVE).findings());
  }

  @Test
  void theLagOfHeatIsTakenAtEachReadingOfThePlate() {
    TrayWatch quiet = scan(watch(FORTY, null, null, LIVE), State.HEATING, false);
    assertEquals(0.1, quiet.heat().elapsedS(), 1e-12);
    assertEquals(0, scan(quiet, State.HEATING, true).heat().elapsedS());
  }

  @Test
  void aFindingIsToldForFiveSeconds() {
    TripCause dry = TripCause.TRAY_DRY;
    FrozenBath still = frozen(9, 0, 0);
    TrayWatch early = told(FORTY, null, null, still, still.span(), dry, 4.9);
    assertEquals(dry, scan(early, State.LOCKOUT, false).named());
    TrayWatch late = told(FORTY, null, null, still, still.span(), dry, 5);
    assertNull(scan(late, State.LOCKOUT, false).named());
  }

  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aFrozenProbeIsToldUntilItsReadingMoves() {
    for (TripCause bad : new TripCause[] {TripCause.BATH_PROBE_BAD, TripCause.PLATE_PROBE_BAD}) {
      boolean bath = bad == TripCause.BATH_PROBE_BAD;
      for (double ageS : new double[] {29, 30, 31}) {
        FrozenBath bathStood = bath ? frozen(ageS, 0, 0) : LIVE;
        ConstantSpan plateStood = bath ? LIVE.span() : stood(ageS, 0);
        TrayWatch watch = told(FORTY, null, null, bathStood, plateStood, bad, 30);
        assertEquals(ageS > 30 ? bad : null, scan(watch, State.LOCKOUT, false).named());
      }
    }
  }

  /** SR-10: 52 s of heat and no more; what it holds is awaited in the bath. */
  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void heatIsHeldOffFromAPlateTooColdThatHadItsHeat() {
    ConstantSpan heated = new ConstantSpan(40, 60, 0, 0, 0, 0, 0, 52, 1, Row.of(64, 0), 1, 0);
    assertEquals(true, told(FORTY, ended(-1), null, LIVE, heated, null, 0).looking());
    assertEquals(false, told(FORTY, ended(-1), null, LIVE, LIVE.span(), null, 0).looking());
    PlateBank lives = PlateBank.start(TRAY, 40);
    assertEquals(false, told(FORTY, lives, null, LIVE, heated, null, 0).looking());
    assertEquals(false, told(FORTY, null, null, LIVE, heated, null, 0).looking());
  }

  @Test
  void aStandingPlateReadingIsWatchedAnewOutsideOfARunUnlessItIsNamed() {
    assertEquals(0.1, plateStands(null, State.OFF), 1e-9);
    assertEquals(5.1, plateStands(null, State.HEATING), 1e-9);
    assertEquals(5.1, plateStands(null, State.LOCKOUT), 1e-9);
    assertEquals(5.1, plateStands(TripCause.PLATE_PROBE_BAD, State.OFF), 1e-9);
  }

  private static double plateStands(@Nullable TripCause named, State state) {
    TrayWatch before = told(FORTY, null, null, LIVE, stood(5, 0), named, 0);
    return scan(before, state, false).plateSpan().ageS();
  }

  /** Without a plate probe: a look ended, and a warm bath did not cool in it. */
  @Test
  @Verifies(value = "SR-11", side = Side.WITHHOLDS)
  @Verifies(value = "SR-11", side = Side.ALLOWS)
  void aBathThatWasHeatedThroughALookIsAStuckContactUnlessItsReadingStands() {
    assertEquals(TripCause.RELAY_STUCK, heatedBlind(true, 119.9));
    assertNull(heatedBlind(true, 120));
    assertNull(heatedBlind(false, 119.9));
  }

  private static @Nullable TripCause heatedBlind(boolean heated, double ageS) {
    BlindLook look = new BlindLook(Blocks.START, HeatMissed.START, 0, null, 0, 0, false, heated);
    TrayWatch w = told(ReadingTrail.START, null, null, frozen(ageS, 0, 0), LIVE.span(), null, 0);
    TrayWatch blind =
        new TrayWatch(
            w.model(),
            w.room(),
            w.heat(),
            w.bath(),
            w.plate(),
            null,
            null,
            w.known(),
            w.frozen(),
            w.plateSpan(),
            w.offRise(),
            w.account(),
            look,
            null,
            0);
    return scan(blind, State.HEATING, false).named();
  }

  @Test
  void candidatesThatEndedBeforeThePurgeIsOverBeginAnewAndLaterDoNot() {
    PlateBank anew = scan(watch(FORTY, ended(-1), null, LIVE), State.PURGING, true).bank();
    assertNotNull(anew);
    assertEquals(0, anew.ageS());
    PlateBank kept = scan(watch(FORTY, ended(1), null, LIVE), State.HEATING, true).bank();
    assertNotNull(kept);
    assertEquals(1, kept.side());
    for (State state : new State[] {State.PURGING, State.HEATING}) {
      PlateBank lives =
          scan(watch(FORTY, PlateBank.start(TRAY, 40), null, LIVE), state, true).bank();
      assertNotNull(lives);
      assertEquals(1, lives.ageS(), "those that live go on");
    }
  }

  @Test
  @Verifies(value = "SR-07", side = Side.WITHHOLDS)
  void aLookBeginsAtAPlateTooHotOrAReadingThatHidesHeatWithTheRateLearned() {
    PlateLook hot = scan(watch(FORTY, ended(1), null, LIVE), State.HEATING, true).look();
    assertEquals(
        PlateLook.begin(0, false, false, false), hot, "where none lives, the slowest plate");
    PlateBank lives = PlateBank.start(TRAY, 40);
    FrozenBath hides = frozen(30, HIDDEN_J, 0); // through 4 W/K at least
    assertEquals(
        PlateLook.begin(lives.coolingPerS(), false, true, false),
        scan(watch(FORTY, lives, null, hides), State.HEATING, true).look());
    assertEquals(
        PlateLook.begin(0, false, true, false),
        scan(watch(FORTY, null, null, hides), State.HEATING, true).look(),
        "nothing learned yet");
    FrozenBath stands = frozen(30, 0, 0);
    assertNull(scan(watch(FORTY, lives, null, stands), State.HEATING, true).look());
    assertNull(scan(watch(FORTY, ended(1), null, LIVE), State.PURGING, false).look());
  }

  @Test
  void aLookAtAStandingReadingGoesOnWhileItStands() {
    PlateLook look = PlateLook.begin(0.02, false, false, false);
    PlateBank lives = PlateBank.start(TRAY, 40);
    FrozenBath stands = frozen(30, 0, 0);
    assertEquals(look, scan(watch(FORTY, lives, look, stands), State.HEATING, true).look());
    assertNull(scan(watch(FORTY, lives, look, LIVE), State.HEATING, true).look());
  }

  /** A pause of heat in vain: 300 s, and what a large bath needs to cool by 0.15 K. */
  @Test
  @Verifies(value = "SR-08", side = Side.WITHHOLDS)
  void aPauseInVainNamesTheReadingOrTheHeatAndAPlateTooHotNamesTheReading() {
    FrozenBath vain = frozen(900, 0, 400);
    FrozenBath pause = frozen(900, 0, 10);
    ReadingTrail blind = ReadingTrail.START;
    assertEquals(
        TripCause.HEAT_NOT_ARRIVING,
        scan(watch(blind, null, null, vain), State.HEATING, false).named());
    assertNull(scan(watch(blind, null, null, pause), State.HEATING, false).named());
    assertEquals(
        TripCause.BATH_PROBE_BAD,
        scan(watch(FORTY, ended(1), null, vain), State.HEATING, true).named());
    assertEquals(
        TripCause.BATH_PROBE_BAD,
        scan(watch(FORTY, ended(1), null, pause), State.HEATING, true).named());
    PlateBank lives = PlateBank.start(TRAY, 40);
    assertNull(scan(watch(FORTY, lives, null, pause), State.HEATING, true).named());
    assertEquals(
        TripCause.HEAT_NOT_ARRIVING,
        scan(watch(FORTY, lives, null, vain), State.HEATING, true).named());
    assertNull(scan(watch(FORTY, ended(1), null, LIVE), State.HEATING, true).named());
  }

  private static ReadingTrail course(double fromC, double perS) {
    ReadingTrail trail = ReadingTrail.START;
    for (int s = 0; s < 9; s++) {
      trail = trail.next(new ThermalInput.Sample(fromC + perS * s, (s + 1) * SECOND));
    }
    return trail;
  }

  private static @Nullable TripCause cold(double fromC, double perS) {
    return told(course(fromC, perS), ended(-1), null, LIVE, ConstantSpan.START, null, 0)
        .next(
            new ThermalInput(
                0.1,
                true,
                State.HEATING,
                new ThermalInput.Sample(40, 10 * SECOND),
                new ThermalInput.Sample(fromC + perS * 9, 10 * SECOND)))
        .named();
  }

  /** Without heat the slowest plate, 190 s, falls by 0.05 K/s where it is 10 K over its bath. */
  @Test
  @Verifies(value = "SR-10", side = Side.ALLOWS)
  void aPlateThatStaysFarOverItsBathIsHeatedWhateverWasBelieved() {
    assertNull(cold(50, 0));
    assertNull(cold(50, -0.01));
  }

  @Test
  @Verifies(value = "SR-10", side = Side.WITHHOLDS)
  void aPlateThatFallsOrIsNearItsBathIsShortOfHeat() {
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cold(50, -0.05));
    assertEquals(TripCause.HEAT_NOT_ARRIVING, cold(43.9, 0));
  }
}
