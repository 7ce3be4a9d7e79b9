package trayward.controller;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.Architectures;
import trayward.controller.port.OutputLine;
import trayward.controller.port.OutputLines;
import trayward.controller.safety.HeaterPermit;
import trayward.controller.scan.BarredOutputs;

/** The directions of the house, kept true. */
@AnalyzeClasses(
    packages = "trayward.controller",
    importOptions = ImportOption.DoNotIncludeTests.class)
class LayoutTest {

  /** Imports go down this list only. */
  @ArchTest
  static final ArchRule importsGoDownTheListOfPackages =
      Architectures.layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .withOptionalLayers(true)
          .layer("app")
          .definedBy("..controller.app..")
          .layer("station")
          .definedBy("..controller.station..")
          .layer("adapters")
          .definedBy(
              "..controller.gpio..",
              "..controller.onewire..",
              "..controller.rig..",
              "..controller.sim..",
              "..controller.transmitter..",
              "..controller.watchdog..")
          .layer("scan")
          .definedBy("..controller.scan..")
          .layer("safety")
          .definedBy("..controller.safety..")
          .layer("regulate")
          .definedBy("..controller.regulate..")
          .layer("sense")
          .definedBy("..controller.sense..")
          .layer("keep")
          .definedBy("..controller.keep..")
          .layer("calibrate")
          .definedBy("..controller.calibrate..")
          .layer("port")
          .definedBy("..controller.port..")
          .layer("modbus")
          .definedBy("..controller.modbus..")
          .layer("event")
          .definedBy("..controller.event..")
          .layer("quantity")
          .definedBy("..controller.quantity..")
          .whereLayer("app")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("station")
          .mayOnlyBeAccessedByLayers("app")
          .whereLayer("adapters")
          .mayOnlyBeAccessedByLayers("app")
          .whereLayer("scan")
          .mayOnlyBeAccessedByLayers("app", "station", "adapters")
          .whereLayer("safety")
          .mayOnlyBeAccessedByLayers("app", "station", "adapters", "scan")
          .whereLayer("regulate")
          .mayOnlyBeAccessedByLayers("app", "station", "adapters", "scan", "safety")
          .whereLayer("sense")
          .mayOnlyBeAccessedByLayers("app", "station", "adapters", "scan", "safety", "regulate")
          .whereLayer("keep")
          .mayOnlyBeAccessedByLayers(
              "app", "station", "adapters", "scan", "safety", "regulate", "sense")
          .whereLayer("calibrate")
          .mayOnlyBeAccessedByLayers("app", "station", "scan", "sense", "keep")
          .whereLayer("modbus")
          .mayOnlyBeAccessedByLayers("app", "station", "adapters");

  /** What speaks on a wire knows nothing of trays. */
  @ArchTest
  static final ArchRule theProtocolKnowsNoTray =
      classes()
          .that()
          .resideInAPackage("..controller.modbus..")
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(
              "java..",
              "org.slf4j..",
              "org.jspecify..",
              "com.fazecast..",
              "com.digitalpetri..",
              "..controller.modbus..",
              "..controller.quantity..");

  @ArchTest
  static final ArchRule adaptersDoNotKnowEachOther =
      slices()
          .matching("trayward.controller.(gpio|onewire|rig|sim|transmitter|watchdog)..")
          .should()
          .notDependOnEachOther()
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule packagesHaveNoCycles =
      slices().matching("trayward.controller.(*)..").should().beFreeOfCycles();

  /** The plant knows nothing of the controller's verdicts. */
  @ArchTest
  static final ArchRule theSimulatedTrayKnowsOnlyPorts =
      noClasses()
          .that()
          .resideInAPackage("..controller.sim..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "..controller.scan..",
              "..controller.safety..",
              "..controller.regulate..",
              "..controller.sense..",
              "..controller.keep..");

  @ArchTest
  static final ArchRule onlyAppAndTestsKnowTheSimulatedTray =
      noClasses()
          .that()
          .resideOutsideOfPackages("..controller.sim..", "..controller.app..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("..controller.sim..");

  @ArchTest
  static final ArchRule theInterlockHasNoInputOutputNoClockNoThreads =
      noClasses()
          .that()
          .resideInAPackage("..controller.safety..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "java.io..",
              "java.nio..",
              "java.net..",
              "java.time..",
              "java.util.concurrent..",
              "org.slf4j..")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.lang.Thread");

  @ArchTest
  static final ArchRule onlyTheInterlockMintsAPermit =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("trayward.controller.safety.Interlock")
          .should()
          .callConstructor(HeaterPermit.class, long.class);

  @ArchTest
  static final ArchRule onlyScanWritesOutputs =
      noClasses()
          .that()
          .resideOutsideOfPackage("..controller.scan..")
          .should()
          .callMethod(OutputLine.class, "write", boolean.class);

  /** In the scan these alone do, each for a reason of its own. */
  @ArchTest
  static final ArchRule onlyTheScanItsHeaterGateAndTheBarredOutputsWriteOutputs =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("trayward.controller.scan.Scan")
          .and()
          .doNotHaveFullyQualifiedName("trayward.controller.scan.HeaterGate")
          .and()
          .doNotHaveFullyQualifiedName("trayward.controller.scan.BarredOutputs")
          .should()
          .callMethod(OutputLine.class, "write", boolean.class);

  /** Outputs driven without a permit belong to commissioning, and commissioning has no scan. */
  @ArchTest
  static final ArchRule onlyTheWiringCheckHasBarredOutputs =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("trayward.controller.app.WiringCheck")
          .should()
          .callConstructor(BarredOutputs.class, OutputLines.class, long.class);

  @ArchTest
  static final ArchRule theWiringCheckHasNoScanAndNoInterlock =
      noClasses()
          .that()
          .haveFullyQualifiedName("trayward.controller.app.WiringCheck")
          .or()
          .haveFullyQualifiedName("trayward.controller.scan.BarredOutputs")
          .should()
          .dependOnClassesThat()
          .haveFullyQualifiedName("trayward.controller.scan.Scan")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("trayward.controller.scan.ScanLoop")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("trayward.controller.safety.Interlock")
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(trayward.controller.safety.Permission.class);

  @ArchTest
  static final ArchRule permitsAreFinalAndCannotBeMadeOutside =
      classes()
          .that()
          .areAssignableTo(HeaterPermit.class)
          .should()
          .haveOnlyFinalFields()
          .andShould()
          .notBeRecords();

  @ArchTest
  static final ArchRule nobodyReadsTheWallClockOrSleeps =
      noClasses()
          .should()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(Thread.class, "sleep", long.class)
          .orShould()
          .callMethod(java.time.Instant.class, "now")
          .orShould()
          .callMethod(java.time.LocalDate.class, "now")
          .orShould()
          .callMethod(java.time.LocalDateTime.class, "now")
          .orShould()
          .callMethod(java.time.ZonedDateTime.class, "now")
          .orShould()
          .callMethod(java.time.OffsetDateTime.class, "now")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.time.Clock")
          .orShould()
          .callConstructor(java.util.Date.class);

  /**
   * SR-22: the wall clock comes in by one port. Only the due dates of SR-23 read it to decide
   * something; the alarm record's thread writes it beside each step, the desk of calibrations
   * beside each point.
   */
  @ArchTest
  static final ArchRule onlyTheDueDatesAndTheRecordsReadTheWallClock =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("trayward.controller.keep.UpkeepDesk")
          .and()
          .doNotHaveFullyQualifiedName("trayward.controller.app.AlarmThread")
          .and()
          .doNotHaveFullyQualifiedName("trayward.controller.keep.CalibrationDesk")
          .and()
          .doNotHaveFullyQualifiedName("trayward.controller.keep.LearnedFile")
          .should()
          .callMethod(trayward.controller.port.WallClock.class, "epochSeconds");

  /** SR-22: what decides in a scan cannot even name it, nor the due dates. */
  @ArchTest
  static final ArchRule noScanKnowsDatesOrDueDates =
      noClasses()
          .that()
          .resideInAnyPackage(
              "..controller.scan..",
              "..controller.safety..",
              "..controller.regulate..",
              "..controller.sense..")
          .should()
          .dependOnClassesThat()
          .haveSimpleNameStartingWith("Upkeep")
          .orShould()
          .dependOnClassesThat()
          .haveSimpleNameStartingWith("Calibration")
          .orShould()
          .dependOnClassesThat()
          .haveSimpleName("AlarmRecord")
          .orShould()
          .dependOnClassesThat()
          .haveSimpleName("WallClock")
          .orShould()
          .dependOnClassesThat()
          .resideInAPackage("java.time..");

  /** One clock: nanoTime is called by whoever wires the program, not in here. */
  @ArchTest
  static final ArchRule nobodyHereReadsTheSystemsMonotonicClock =
      noClasses().should().callMethod(System.class, "nanoTime");
}
