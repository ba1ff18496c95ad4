package ohmtrail.cli;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import ohmtrail.advise.Advisor;
import ohmtrail.locate.Locator;
import ohmtrail.predict.JointSweep;
import ohmtrail.predict.Predictor;
import ohmtrail.predict.SolvedSurvey;
import ohmtrail.predict.SurveyModel;
import ohmtrail.slip.AveragedLocator;
import org.jspecify.annotations.NullMarked;

/** Keeps the arrows between the program's packages, and each library in the package it serves. */
@AnalyzeClasses(packages = "ohmtrail.cli", importOptions = DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule theArrowsGoOneWay =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .withOptionalLayers(true)
          .layer("commands")
          .definedBy("ohmtrail.cli")
          .layer("casefile")
          .definedBy("ohmtrail.cli.casefile..")
          .layer("render")
          .definedBy("ohmtrail.cli.render..")
          .layer("walk")
          .definedBy("ohmtrail.cli.walk..")
          .layer("chart")
          .definedBy("ohmtrail.cli.chart..")
          .layer("report")
          .definedBy("ohmtrail.cli.report..")
          .whereLayer("commands")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("casefile")
          .mayNotAccessAnyLayer()
          .whereLayer("render")
          .mayOnlyAccessLayers("casefile")
          .whereLayer("walk")
          .mayOnlyAccessLayers("casefile", "render")
          .whereLayer("chart")
          .mayOnlyAccessLayers("casefile", "render")
          .whereLayer("report")
          .mayOnlyAccessLayers("casefile", "render", "chart");

  @ArchTest
  static final ArchRule everyClassBelongsToOneOfTheNamedPackages =
      classes()
          .should()
          .resideInAnyPackage(
              "ohmtrail.cli",
              "ohmtrail.cli.build..",
              "ohmtrail.cli.casebook..",
              "ohmtrail.cli.casefile..",
              "ohmtrail.cli.file..",
              "ohmtrail.cli.terminal..",
              "ohmtrail.cli.install..",
              "ohmtrail.cli.names..",
              "ohmtrail.cli.render..",
              "ohmtrail.cli.walk..",
              "ohmtrail.cli.chart..",
              "ohmtrail.cli.report..");

  @ArchTest
  static final ArchRule noPackagesFormACycle =
      slices().matching("ohmtrail.cli.(**)").should().beFreeOfCycles().allowEmptyShould(true);

  @ArchTest
  static final ArchRule onlyChartsAndReportsDraw =
      noClasses()
          .that()
          .resideOutsideOfPackages("ohmtrail.cli.chart..", "ohmtrail.cli.report..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "org.knowm.xchart..", "java.awt..", "javax.swing..", "javax.imageio..");

  /** Every figure is worked out once, in the solver. */
  @ArchTest
  static final ArchRule whoWritesAnAnswerComputesNothing =
      noClasses()
          .that()
          .resideInAnyPackage(
              "ohmtrail.cli.render..", "ohmtrail.cli.chart..", "ohmtrail.cli.walk..")
          .should()
          .dependOnClassesThat()
          .belongToAnyOf(Predictor.class, SolvedSurvey.class, SurveyModel.class, JointSweep.class);

  @ArchTest
  static final ArchRule whoWritesAnAnswerLocatesNothing =
      noClasses()
          .that()
          .resideInAnyPackage(
              "ohmtrail.cli.render..", "ohmtrail.cli.chart..", "ohmtrail.cli.walk..")
          .should()
          .dependOnClassesThat()
          .belongToAnyOf(Locator.class, AveragedLocator.class, Advisor.class);

  @ArchTest
  static final ArchRule onlyTheCaseFileReaderKnowsYaml =
      noClasses()
          .that()
          .resideOutsideOfPackage("ohmtrail.cli.casefile..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.snakeyaml..");

  @ArchTest
  static final ArchRule onlyTheCommandsKnowTheCommandLine =
      noClasses()
          .that()
          .resideOutsideOfPackage("ohmtrail.cli")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("picocli..")
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule onlyTheMainClassTouchesTheProcess =
      noClasses()
          .that()
          .doNotBelongToAnyOf(Ohmtrail.class)
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .accessField(System.class, "in")
          .orShould()
          .callMethod(System.class, "exit", int.class);

  @ArchTest
  static final ArchRule noStaticIsReassigned =
      fields().that().areStatic().should().beFinal().allowEmptyShould(true);

  @ArchTest
  static final ArchRule recordsHoldNoArrays =
      classes().that().areRecords().should(holdNoArrays()).allowEmptyShould(true);

  @ArchTest
  static final ArchRule everyPackageSaysThatNothingIsNull =
      classes().should(beInANullMarkedPackage());

  private static ArchCondition<JavaClass> holdNoArrays() {
    return new ArchCondition<>("hold no arrays") {
      @Override
      public void check(JavaClass record, ConditionEvents events) {
        record.getFields().stream()
            .filter(field -> !field.getModifiers().contains(JavaModifier.STATIC))
            .filter(field -> field.getRawType().isArray())
            .forEach(
                field -> events.add(SimpleConditionEvent.violated(field, field.getDescription())));
      }
    };
  }

  private static ArchCondition<JavaClass> beInANullMarkedPackage() {
    return new ArchCondition<>("be in a package that is marked @NullMarked") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        boolean marked = type.getPackage().isAnnotatedWith(NullMarked.class);
        events.add(
            new SimpleConditionEvent(
                type, marked, type.getPackageName() + " has no @NullMarked package-info"));
      }
    };
  }
}
