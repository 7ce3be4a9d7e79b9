package trayward.host.report.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.report.plan.Plans.answer;
import static trayward.host.report.plan.Plans.ask;
import static trayward.host.report.plan.Plans.problem;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import trayward.host.bath.Problem;

/** What the planners answer, beside the sources of their formulas; see the domains' own tests. */
class PlannersTest {

  private static final double SIX_DIGITS = 1e-5;

  private static void near(double expected, JsonNode document, String key, double share) {
    assertEquals(expected, document.path(key).asDouble(Double.NaN), expected * share, key);
  }

  /** CDC MMWR 1994;43(RR-13), table S3-1: 28 min at 10 air changes; three times that with K = 3. */
  @Test
  void thePurgeIsThatOfThePrintedTableTimesTheMixing() {
    JsonNode perfect = ask("air", "volume=15 flow=150 mixing=1");
    near(10, perfect, "air_changes_per_h", 0);
    assertEquals(28, Math.round(perfect.path("purge_min").asDouble()));
    near(Math.ceil(perfect.path("purge_min").asDouble() * 60), perfect, "purge_s", SIX_DIGITS);
    JsonNode poor = ask("air", "volume=15 flow=150");
    near(3 * perfect.path("purge_min").asDouble(), poor, "purge_min", SIX_DIGITS);
    assertTrue(poor.path("cautions").toString().contains("purge_s can be set to 3600 s"));
  }

  /** C = (G/Q)(1 - exp(-Qt/V)) and V/Q ln(C1/C2), recomputed. */
  @Test
  void aSourceRisesAndDecays() {
    JsonNode room = ask("air", "volume=15 flow=150 mixing=1 source=100 minutes=10 down_to=0.05");
    near(0.66667, room, "steady_mg_per_m3", SIX_DIGITS);
    near(0.54075, room, "peak_mg_per_m3", 2e-5);
    near(15.54, room, "after_run_min", 0.001);
    near(room.path("peak_ppm").asDouble() / 6 / 8, room, "day_mean_ppm", SIX_DIGITS);
    JsonNode poor = ask("air", "volume=15 flow=150 mixing=3 source=100 minutes=10");
    near(0.85249, poor, "peak_mg_per_m3", 2e-5);
    near(2.0, poor, "steady_mg_per_m3", 0);
  }

  /** Upper bound of a bath, recomputed: 12.67 ppm over it, some 25 mg/h to a factor of two. */
  @Test
  void aBathWithFormaldehydeIsShownAsAnUpperBoundBesideEveryLimit() {
    JsonNode room =
        ask(
            "air",
            "volume=15 flow=150 mixing=1 formaldehyde=12 bath=42 area=0.12 draught=0 room=21"
                + " minutes=480");
    near(12.67, room, "surface_ppm", 0.005);
    near(25.3, room, "source_mg_per_h", 0.02);
    near(0.169, room, "steady_mg_per_m3", 0.02);
    assertEquals(8, room.path("limits").size());
    JsonNode rel = room.path("limits").path(3);
    near(0.016, rel, "limit_ppm", 0);
    near(room.path("day_mean_ppm").asDouble() / 0.016, rel, "times_limit", 1e-4);
    assertTrue(room.path("cautions").toString().contains("taken as free"));
  }

  /** 29 CFR 1910.1000(d)(1)(ii) and (d)(2)(ii). */
  @Test
  void aDaysMeanAndAMixtureAreThoseOfTheRule() {
    JsonNode day =
        ask("air", "volume=15 flow=150 spells=2x150,2x75,4x50 mixture=500/1000,45/200,40/200");
    near(81.25, day, "spells_mean", 0);
    near(0.925, day, "mixture", 1e-9);
  }

  /** The pool equation, recomputed: 111.5 g/h; G/Q 0.743 g/m³ of 18.35 at saturation. */
  @Test
  void dampAndMakeUpAirAreTold() {
    JsonNode room = ask("air", "volume=15 flow=150 bath=42 area=0.12 draught=0 room=21 outside=1");
    near(111.5, room, "evaporation_g_per_h", 0.002);
    near(111.5 / 150, room, "vapour_added_g_per_m3", 0.002);
    near(0.5 + 0.743 / 18.35, room, "humidity", 0.002);
    near(416.7, room, "inlet_cm2", 0.001);
    near(1006, room, "make_up_heat_w", 0.01);
    String wet = ask("air", "volume=15 flow=5 bath=42 area=0.12").path("cautions").toString();
    assertTrue(wet.contains("saturated"), wet);
  }

  @Test
  void nothingIsEverCalledSafe() {
    List<String> all =
        List.of(
            String.join(" ", answer("air", "volume=15 flow=9000 source=0.001").text()),
            ask("air", "volume=15 flow=9000 source=0.001").toString(),
            String.join(" ", answer("heat", "cover=true").text()));
    for (String text : all) {
      String low = text.toLowerCase(Locale.ROOT);
      assertFalse(low.matches("(?s).*\\b(safe|harmless|fit to breathe)\\b.*"), text);
    }
    assertTrue(all.get(0).contains("A filter mask is no interlock"), all.get(0));
    assertTrue(all.get(0).contains("estimate"), all.get(0));
  }

  /** Own integration of the reference tray: 45.0 W, 107.7 W, 612.2 s, 614.5 s, 45.28 °C. */
  @Test
  void theReferenceTrayIsPlannedAsItIs() {
    JsonNode tray = ask("heat", "");
    near(45.02, tray, "evaporation_w", 0.01);
    near(0.4307, tray, "hold_duty", 0.01);
    near(45.28, tray, "hold_plate_c", 0.001);
    near(612.2, tray, "warm_up_s", 0.01);
    near(614.5, tray, "warm_up_no_overshoot_s", 0.01);
    near(50.9, tray, "warm_up_plate_c", 0.01);
    JsonNode pour = ask("heat", "pour=0.3 pour_at=20");
    near(35.38, pour, "pour_c", 0.001);
    near(201.1, pour, "pour_recovery_s", 0.01);
  }

  /** Own arithmetic and Stefan-Boltzmann: 14.7 and 15.37 W of a tray of 0.12 m² at 42 °C. */
  @Test
  void theSurfaceLosesByConvectionAndRadiation() {
    JsonNode tray = ask("heat", "set=42 room=21 area=0.12 draught=0 litres=3");
    near(5.85, tray, "convection_w_per_m2_k", 0.1);
    near(6.10, tray, "radiation_w_per_m2_k", 0.01);
    near(14.7 + 15.37, tray, "surface_dry_w", 0.1);
    near(74.4, tray, "evaporation_w", 0.005);
    near(275.3, ask("heat", "litres=3 set=42 room=20"), "heat_up_kj", 0.002);
  }

  @Test
  void aCoverAnUndisturbedBathAndALargerHeaterChangeWhatTheyShould() {
    JsonNode open = ask("heat", "");
    JsonNode covered = ask("heat", "cover=true");
    near(0, covered, "evaporation_w", 0);
    near(open.path("covered_hold_w").asDouble(), covered, "hold_w", SIX_DIGITS);
    near(0.74 * 45.02, ask("heat", "factor=0.74"), "evaporation_w", 0.01);
    JsonNode quick = ask("heat", "within=8");
    String watts = quick.path("least_w").asText();
    double seconds = ask("heat", "watts=" + watts).path("warm_up_no_overshoot_s").asDouble();
    assertTrue(seconds <= 480 && seconds > 470, watts + " W take " + seconds);
    assertTrue(ask("heat", "within=1").path("least_w").isNull());
    assertTrue(ask("heat", "start=45 within=8").path("warm_up_s").isNull());
    assertFalse(ask("heat", "start=45 within=8").has("least_w"));
    JsonNode weak = ask("heat", "watts=60");
    assertTrue(weak.path("warm_up_s").isNull());
    assertTrue(weak.path("cautions").toString().contains("too weak to hold it"));
  }

  /** Balance of heat, own arithmetic. */
  @Test
  void mixingThereAndBackGivesTheSame() {
    JsonNode to = ask("mix", "hot=55 cold=15 target=40 litres=1 tray=1100");
    String measures =
        " hot_litres=" + to.path("hot_l").asText() + " cold_litres=" + to.path("cold_l").asText();
    near(40, ask("mix", "hot=55 cold=15 tray=1100" + measures), "mixed_c", SIX_DIGITS);
    assertTrue(to.path("cautions").toString().contains("scalds"), to.toString());
    assertTrue(to.path("hot_l").asDouble() > 0.7, to.toString());
  }

  /** t 2^n; ((M2+1)/(M1+1))²; t 4^(1/p), p from memory; half the geometric mean of IT2.26-1998. */
  @Test
  void exposuresAreThoseOfTheirFormulas() {
    near(40.317, ask("exposure", "time=8 stops=7/3"), "time_s", 2e-5);
    JsonNode size = ask("exposure", "time=10 from_magnification=4 to_magnification=8");
    near(32.4, size, "time_s", SIX_DIGITS);
    near(1.696, size, "size_stops", 0.001);
    near(46.66, ask("exposure", "time=10 stops=2 p=0.9"), "time_s", 2e-4);
    near(1.696, ask("exposure", "negative=36 from_print=144 to_print=288"), "size_stops", 0.001);
    near(5.657, ask("exposure", "clean=8 fogged=16"), "safelight_min", 1e-4);
    near(2, ask("exposure", "time=8 to_time=32"), "stops_between", 0);
    JsonNode closed = ask("exposure", "time=8 from_f=5.6 to_f=11.2");
    near(2, closed, "aperture_stops", SIX_DIGITS);
    near(32, closed, "time_s", SIX_DIGITS);
    JsonNode strip = ask("exposure", "time=8 strip_step=1/3");
    assertEquals(7, strip.path("strip_totals_s").size());
    assertEquals(25.398, strip.path("strip_totals_s").path(5).asDouble(), 0.001);
    assertEquals(6.602, strip.path("strip_exposures_s").path(6).asDouble(), 0.001);
  }

  /** Weight in volume, own arithmetic: 0.8 g/L, 6.723 mmol/L made up; 0.79365 g/L on top. */
  @Test
  void bromideIsCountedMadeUpAndOnTop() {
    JsonNode up = ask("bath", "dilution=1+7 litres=1 bromide=8");
    near(0.8, up, "bromide_g_per_l", SIX_DIGITS);
    near(6.723, up, "bromide_mmol_per_l", 2e-4);
    near(1000, up, "volume_ml", SIX_DIGITS);
    JsonNode top = ask("bath", "dilution=1+7 litres=1 bromide=8 on_top=true");
    near(0.79365, top, "bromide_g_per_l", SIX_DIGITS);
    near(1008, top, "volume_ml", SIX_DIGITS);
    near(8, ask("bath", "dilution=1+7 litres=1 want_bromide=0.8"), "bromide_in_place_ml", 1e-5);
    near(8, ask("bath", "dilution=1+7 litres=1 want_bromide=0.79365"), "bromide_on_top_ml", 1e-4);
  }

  /** 1+7 is an eighth (common practice); A and B in 1+1+20 are 1/22 each (arithmetic). */
  @Test
  void aDilutionIsCountedInParts() {
    JsonNode one = ask("bath", "dilution=1+7 litres=2");
    assertEquals(250, one.path("concentrates_ml").path(0).asDouble(), 1e-3);
    near(1750, one, "water_ml", 0);
    JsonNode two = ask("bath", "dilution=1+1+20 litres=1 concentrate_sulfite=80");
    assertEquals(1 / 22.0, two.path("concentrate_shares").path(1).asDouble(), 1e-6);
    near(160 / 22.0, two, "sulfite_g_per_l", SIX_DIGITS);
    JsonNode kept = ask("bath", "dilution=1+9 litres=20 kept=500 kept_bromide=2");
    near(0.05, kept, "bromide_g_per_l", SIX_DIGITS);
    near(20_000, kept, "volume_ml", SIX_DIGITS);
    assertTrue(
        ask("bath", "dilution=1+0 litres=1 want_bromide=0.5").path("bromide_in_place_ml").isNull(),
        "there is no water to take the place of");
    assertTrue(
        ask("bath", "dilution=1+7 litres=1 bromide=8 want_bromide=0.5")
            .path("bromide_on_top_ml")
            .isNull());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "air | flow=150 | volume | nothing",
        "air | volume=0 flow=150 | volume | 0",
        "air | volume=15 flow=0 | flow | 0",
        "air | volume=15 flow=150 mixing=0.5 | mixing | 0.5",
        "air | volume=15 flow=150 humidity=120 | humidity | 120",
        "air | volume=15 flow=150 removal=100 | removal | 100",
        "air | volume=15 flow=150 gas=smoke | gas | smoke",
        "air | volume=15 flow=150 source=1 formaldehyde=2 | source | 1",
        "air | volume=15 flow=150 formaldehyde=2 gas=ammonia | gas | ammonia",
        "air | volume=15 flow=150 down_to=0.1 | source | nothing",
        "air | volume=15 flow=150 spells=2x | spells | 2x",
        "air | volume=15 flow=150 spells=25x1 | spells | 25x1",
        "air | volume=15 flow=150 mixture=1/0 | mixture | 1/0",
        "air | volume=15 flow=150 colour=red | colour | an unknown option",
        "air | volume=NaN flow=150 | volume | NaN",
        "air | volume=1e3 flow=150 | volume | 1e3",
        "air | volume=1/0 flow=150 | volume | 1/0",
        "air | volume=15 flow=1/0 | flow | 1/0",
        "heat | litres=0 | litres | 0",
        "heat | humidity=1.2 | humidity | 1.2",
        "heat | watts=none | watts | none",
        "heat | cover=yes | cover | yes",
        "heat | pour_at=20 | pour | nothing",
        "mix | hot=55 | cold | nothing",
        "mix | hot=55 cold=15 | target | nothing",
        "mix | hot=55 cold=15 target=40 | litres | nothing",
        "mix | hot=55 cold=15 target=60 litres=1 | target | 60",
        "mix | hot=15 cold=55 target=40 litres=1 | hot | 15",
        "mix | hot=55 cold=15 target=40 litres=1 hot_litres=1 | target | 40",
        "mix | hot=55 cold=15 hot_litres=1 | cold_litres | nothing",
        "mix | hot=55 cold=15 hot_litres=0 cold_litres=0 | hot_litres | 0",
        "mix | hot=55 cold=15 target=40 litres=1 present=1 | litres | 1",
        "exposure | stops=1 | time | nothing",
        "exposure | p=1 | time | nothing",
        "exposure | time=8 from_f=0 to_f=8 | from_f | 0",
        "exposure | time=8 from_f=5.6 | to_f | nothing",
        "exposure | time=8 strip_step=1 strip_steps=2.5 | strip_steps | 2.5",
        "exposure | time=8 strip_steps=5 | strip_step | nothing",
        "exposure | clean=16 fogged=8 | fogged | 8",
        "exposure | negative=1 from_print=500 to_print=100 | negative | 1",
        "exposure | negative=36 from_print=144 | to_print | nothing",
        "exposure | negative=36 from_print=9 to_print=9 from_magnification=1 | negative | 36",
        "bath | litres=1 | dilution | nothing",
        "bath | dilution=1:7 litres=1 | dilution | 1:7",
        "bath | dilution=1+7 litres=0 | litres | 0",
        "bath | dilution=1+0 litres=1 bromide=8 | litres | 1"
      })
  void whatIsOutOfRangeOrMissingIsNamed(String planner, String words, String field, String found) {
    Problem problem = problem(planner, words);
    assertEquals(field, problem.field(), problem.toString());
    assertEquals(found, problem.found());
    assertFalse(problem.accepted().isBlank());
  }

  @Test
  void aNameOfAnyLengthIsAnsweredShortly() {
    assertEquals(41, problem("heat", "x".repeat(5000) + "=1").field().length());
    assertTrue(problem("heat", "watts=" + "9".repeat(5000)).found().length() <= 80);
  }

  @Test
  void whatWasTakenIsSaidAndWhatItRestsOnIsThereForMachines() {
    PlanAnswer answer = answer("air", "volume=15 flow=150 mixing=2");
    String first = answer.text().get(0);
    assertTrue(first.startsWith("taken: --removal 99, --gas formaldehyde"), first);
    JsonNode asked = PlanJson.node(answer).path("asked");
    assertEquals(2, asked.path("mixing").asDouble());
    assertEquals(99, asked.path("removal").asDouble());
    assertEquals("air", PlanJson.node(answer).path("plan").asText());
  }

  @Test
  void everyOptionSaysWhatItMeansInItsUnitAndHasANameOfItsOwn() {
    for (Planner planner : Planners.all()) {
      Set<String> names = new HashSet<>();
      for (PlanOption option : planner.options()) {
        assertTrue(names.add(option.name()), option.name());
        assertTrue(option.name().matches("[a-z]+(_[a-z]+)*"), option.name());
        assertFalse(option.words().isBlank());
        boolean within =
            option.otherwise().isEmpty() || option.problem(option.otherwise()).isEmpty();
        assertTrue(within, "its own default: " + option);
      }
    }
  }
}
