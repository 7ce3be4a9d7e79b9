package trayward.host;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import trayward.controller.safety.Requirement;

/** Tests of the whole program name requirements that exist, and show both sides of each. */
class RequirementsAreKnownTest {

  @Test
  void everyRequirementNamedByTestsOfTheWholeProgramExistsAndIsShownOnBothSides() {
    Map<String, Set<Verifies.Side>> sides = new TreeMap<>();
    new ClassFileImporter()
        .importPackages("trayward.host").stream()
            .flatMap(c -> c.getMethods().stream())
            .flatMap(RequirementsAreKnownTest::named)
            .forEach(
                v ->
                    sides
                        .computeIfAbsent(v.value(), x -> EnumSet.noneOf(Verifies.Side.class))
                        .add(v.side()));
    assertEquals(
        Set.of("SR-12", "SR-13", "SR-14", "SR-15", "SR-17", "SR-18", "SR-19", "SR-27"),
        sides.keySet());
    sides.forEach(
        (id, shown) -> {
          assertEquals(id, Requirement.of(id).map(Requirement::id).orElse("unknown"));
          assertEquals(EnumSet.allOf(Verifies.Side.class), shown, id);
        });
  }

  private static Stream<Verifies> named(JavaMethod method) {
    return method.isAnnotatedWith(Verifies.class) || method.isAnnotatedWith(Verifies.All.class)
        ? Arrays.stream(method.reflect().getAnnotationsByType(Verifies.class))
        : Stream.of();
  }
}
