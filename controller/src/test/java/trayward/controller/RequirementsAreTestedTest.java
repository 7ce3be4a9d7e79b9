package trayward.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import trayward.controller.safety.Requirement;

/** Every requirement that is built is tested on both sides, and no test names an unknown one. */
class RequirementsAreTestedTest {

  @Test
  void everyBuiltRequirementHasTestsForBothSidesAndEveryIdIsKnown() {
    Map<Requirement, Set<Verifies.Side>> sides = new EnumMap<>(Requirement.class);
    Set<String> unknown = new TreeSet<>();
    for (Verifies verifies : allOfThisModule()) {
      Requirement.of(verifies.value())
          .ifPresentOrElse(
              r ->
                  sides
                      .computeIfAbsent(r, x -> EnumSet.noneOf(Verifies.Side.class))
                      .add(verifies.side()),
              () -> unknown.add(verifies.value()));
    }
    assertEquals(Set.of(), unknown, "ids no requirement has");
    for (Requirement requirement : Requirement.values()) {
      assertEquals(
          EnumSet.allOf(Verifies.Side.class),
          sides.getOrDefault(requirement, Set.of()),
          requirement.id() + " needs a test for each side");
    }
    assertTrue(sides.size() >= 15, "the scan of test classes found hardly anything");
  }

  private static List<Verifies> allOfThisModule() {
    JavaClasses classes = new ClassFileImporter().importPackages("trayward.controller");
    List<Verifies> all = new ArrayList<>();
    for (JavaMethod method : classes.stream().flatMap(c -> c.getMethods().stream()).toList()) {
      Method reflected =
          method.isAnnotatedWith(Verifies.class) || method.isAnnotatedWith(Verifies.All.class)
              ? method.reflect()
              : null;
      if (reflected != null) {
        all.addAll(List.of(reflected.getAnnotationsByType(Verifies.class)));
      }
    }
    return all;
  }
}
