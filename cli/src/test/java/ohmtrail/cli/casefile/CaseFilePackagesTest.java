package ohmtrail.cli.casefile;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Keeps the arrows between the four packages that the case file is read with. */
@AnalyzeClasses(packages = "ohmtrail.cli", importOptions = DoNotIncludeTests.class)
class CaseFilePackagesTest {

  @ArchTest
  static final ArchRule theArrowsGoOneWay =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("casefile")
          .definedBy("ohmtrail.cli.casefile")
          .layer("text")
          .definedBy("ohmtrail.cli.casefile.text")
          .layer("words")
          .definedBy("ohmtrail.cli.casefile.words")
          .layer("feeder")
          .definedBy("ohmtrail.cli.casefile.feeder")
          .layer("run")
          .definedBy("ohmtrail.cli.casefile.run")
          .layer("equipment")
          .definedBy("ohmtrail.cli.casefile.equipment")
          .layer("circumstances")
          .definedBy("ohmtrail.cli.casefile.circumstances")
          .layer("survey")
          .definedBy("ohmtrail.cli.casefile.survey")
          .whereLayer("text")
          .mayNotAccessAnyLayer()
          .whereLayer("words")
          .mayOnlyAccessLayers("text")
          .whereLayer("feeder")
          .mayOnlyAccessLayers("text", "words")
          .whereLayer("run")
          .mayOnlyAccessLayers("text", "words", "feeder")
          .whereLayer("equipment")
          .mayOnlyAccessLayers("text", "words", "run")
          .whereLayer("circumstances")
          .mayOnlyAccessLayers("text", "words")
          .whereLayer("survey")
          .mayOnlyAccessLayers("text", "words", "run", "equipment");

  @ArchTest
  static final ArchRule onlyTheTreeOfAFileKnowsYaml =
      noClasses()
          .that()
          .resideOutsideOfPackage("ohmtrail.cli.casefile.text")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.snakeyaml..");

  @ArchTest
  static final ArchRule nobodyElseLooksInside =
      noClasses()
          .that()
          .resideOutsideOfPackage("ohmtrail.cli.casefile..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "ohmtrail.cli.casefile.text..",
              "ohmtrail.cli.casefile.words..",
              "ohmtrail.cli.casefile.feeder..",
              "ohmtrail.cli.casefile.run..",
              "ohmtrail.cli.casefile.equipment..",
              "ohmtrail.cli.casefile.survey..");
}
