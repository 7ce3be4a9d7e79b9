package trayward.host;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.Architectures;

/** The directions of the host's house, kept true. */
@AnalyzeClasses(packages = "trayward.host", importOptions = ImportOption.DoNotIncludeTests.class)
class LayoutTest {

  private static final String[] DOMAIN = {
    "..host.session..",
    "..host.bath..",
    "..host.forecast..",
    "..host.exposure..",
    "..host.air..",
    "..host.heat.."
  };

  @ArchTest
  static final ArchRule importsGoDownTheListOfPackages =
      Architectures.layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .withOptionalLayers(true)
          .layer("app")
          .definedBy("..host.app..")
          .layer("cli")
          .definedBy("..host.cli..")
          .layer("web")
          .definedBy("..host.web..")
          .layer("report")
          .definedBy("..host.report..")
          .layer("store")
          .definedBy("..host.store..")
          .layer("link")
          .definedBy("..host.link..")
          .layer("domain")
          .definedBy(DOMAIN)
          .whereLayer("app")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("cli")
          .mayOnlyBeAccessedByLayers("app")
          .whereLayer("web")
          .mayOnlyBeAccessedByLayers("app", "cli")
          .whereLayer("report")
          .mayOnlyBeAccessedByLayers("app", "cli", "web")
          .whereLayer("store")
          .mayOnlyBeAccessedByLayers("app", "cli", "web", "report")
          .whereLayer("link")
          .mayOnlyBeAccessedByLayers("app", "cli", "web", "report", "store");

  @ArchTest
  static final ArchRule domainPackagesKnowNoFrameworkNoStoreNoPage =
      noClasses()
          .that()
          .resideInAnyPackage(DOMAIN)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "..host.app..",
              "..host.cli..",
              "..host.web..",
              "..host.report..",
              "..host.store..",
              "..host.link..",
              "io.javalin..",
              "com.fasterxml..",
              "org.jdbi..",
              "java.sql..",
              "picocli..",
              "org.slf4j..");

  @ArchTest
  static final ArchRule onlyLinkAndAppReachTheController =
      noClasses()
          .that()
          .resideOutsideOfPackages("..host.link..", "..host.app..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("trayward.controller..");

  @ArchTest
  static final ArchRule theOracleOfTheCampaignKnowsNothingOfTheInterlock =
      noClasses()
          .that()
          .resideInAPackage("..host.app.campaign..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "..controller.safety..", "..controller.sim..", "..controller.regulate..");

  /** They measure a regulator behind the whole scan: of the interlock they know its limits. */
  @ArchTest
  static final ArchRule theGoalsKnowNothingOfPageLogAndCampaign =
      noClasses()
          .that()
          .resideInAPackage("..host.app.goals..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "..host.app.campaign..",
              "..host.web..",
              "..host.store..",
              "..host.link..",
              "..host.session..",
              "..host.bath..",
              "..controller.scan..",
              "..controller.keep..")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("trayward.controller.safety.Interlock");

  @ArchTest
  static final ArchRule packagesHaveNoCycles =
      slices().matching("trayward.host.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule nobodySleepsButForLastWords =
      noClasses().should().callMethod(Thread.class, "sleep", long.class);
}
