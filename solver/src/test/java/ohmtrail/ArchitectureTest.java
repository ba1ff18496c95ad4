package ohmtrail;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.GeneralCodingRules.NO_CLASSES_SHOULD_USE_JAVA_UTIL_LOGGING;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.time.Clock;
import java.time.Instant;
import java.util.Random;
import org.jspecify.annotations.NullMarked;

/** Keeps the arrows between the packages, and the solver away from console, files and clocks. */
@AnalyzeClasses(packages = "ohmtrail", importOptions = DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule theArrowsGoOneWay =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .withOptionalLayers(true)
          .layer("reference")
          .definedBy("ohmtrail.reference..")
          .layer("network")
          .definedBy("ohmtrail.network..")
          .layer("circuit")
          .definedBy("ohmtrail.circuit..")
          .layer("survey")
          .definedBy("ohmtrail.survey..")
          .layer("problem")
          .definedBy("ohmtrail.problem..")
          .layer("predict")
          .definedBy("ohmtrail.predict..")
          .layer("locate")
          .definedBy("ohmtrail.locate..")
          .layer("slip")
          .definedBy("ohmtrail.slip..")
          .layer("map")
          .definedBy("ohmtrail.map..")
          .layer("sensitivity")
          .definedBy("ohmtrail.sensitivity..")
          .layer("report")
          .definedBy("ohmtrail.report..")
          .layer("advise")
          .definedBy("ohmtrail.advise..")
          .layer("practice")
          .definedBy("ohmtrail.practice..")
          .layer("entry")
          .definedBy("ohmtrail")
          .whereLayer("entry")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("reference")
          .mayNotAccessAnyLayer()
          .whereLayer("network")
          .mayNotAccessAnyLayer()
          .whereLayer("circuit")
          .mayOnlyAccessLayers("reference", "network")
          .whereLayer("survey")
          .mayOnlyAccessLayers("reference", "network", "circuit")
          .whereLayer("problem")
          .mayOnlyAccessLayers("reference", "circuit", "survey")
          .whereLayer("predict")
          .mayOnlyAccessLayers("reference", "network", "circuit", "survey", "problem")
          .whereLayer("locate")
          .mayOnlyAccessLayers("reference", "network", "circuit", "survey", "problem", "predict")
          .whereLayer("slip")
          .mayOnlyAccessLayers("reference", "circuit", "survey", "problem", "predict", "locate")
          .whereLayer("map")
          .mayOnlyAccessLayers(
              "reference", "circuit", "survey", "problem", "predict", "locate", "slip")
          .whereLayer("sensitivity")
          .mayOnlyAccessLayers(
              "reference", "circuit", "survey", "problem", "predict", "locate", "slip")
          .whereLayer("report")
          .mayOnlyAccessLayers(
              "reference", "circuit", "survey", "problem", "predict", "locate", "slip", "map")
          .whereLayer("advise")
          .mayOnlyAccessLayers(
              "reference",
              "network",
              "circuit",
              "survey",
              "problem",
              "predict",
              "locate",
              "slip",
              "map",
              "report")
          .whereLayer("practice")
          .mayOnlyAccessLayers(
              "reference",
              "network",
              "circuit",
              "survey",
              "problem",
              "predict",
              "locate",
              "slip",
              "map",
              "report",
              "advise");

  @ArchTest
  static final ArchRule everyClassBelongsToOneOfTheNamedPackages =
      classes()
          .should()
          .resideInAnyPackage(
              "ohmtrail",
              "ohmtrail.reference..",
              "ohmtrail.network..",
              "ohmtrail.circuit..",
              "ohmtrail.survey..",
              "ohmtrail.problem..",
              "ohmtrail.predict..",
              "ohmtrail.locate..",
              "ohmtrail.slip..",
              "ohmtrail.map..",
              "ohmtrail.sensitivity..",
              "ohmtrail.report..",
              "ohmtrail.advise..",
              "ohmtrail.practice..");

  @ArchTest
  static final ArchRule noPackagesFormACycle =
      slices().matching("ohmtrail.(**)").should().beFreeOfCycles().allowEmptyShould(true);

  @ArchTest
  static final ArchRule theNetworkKnowsNothingOfOhmtrailButItself =
      noClasses()
          .that()
          .resideInAPackage("ohmtrail.network..")
          .should()
          .dependOnClassesThat(
              resideInAPackage("ohmtrail..").and(resideOutsideOfPackage("ohmtrail.network..")))
          .allowEmptyShould(true);

  /**
   * No rule of the form "if the low reading is below so much": what a meter is, and what it was
   * held to, is the network's business. The evidence sees numbers and slopes.
   */
  @ArchTest
  static final ArchRule theEvidenceKnowsNoMeterAndNoProbe =
      noClasses()
          .that()
          .resideInAPackage("ohmtrail.locate..")
          .should()
          .callMethod(ohmtrail.survey.Meter.class, "inputOhms")
          .orShould()
          .callMethod(ohmtrail.survey.Reading.class, "value")
          .orShould()
          .callMethod(ohmtrail.survey.Reading.class, "tap")
          .orShould()
          .callMethod(ohmtrail.survey.Reading.class, "between")
          .orShould()
          .dependOnClassesThat()
          .belongToAnyOf(
              ohmtrail.survey.ProbePoints.class,
              ohmtrail.survey.ProbePoint.class,
              ohmtrail.survey.Tap.class,
              ohmtrail.survey.Isolation.class);

  @ArchTest static final ArchRule nothingPrints = NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS;

  @ArchTest static final ArchRule nothingLogs = NO_CLASSES_SHOULD_USE_JAVA_UTIL_LOGGING;

  @ArchTest
  static final ArchRule nothingOpensAFileOrAConnection =
      noClasses()
          .should()
          .dependOnClassesThat(
              resideInAnyPackage("java.nio.file..", "java.net..").or(areFileTypesOfJavaIo()));

  @ArchTest
  static final ArchRule nothingDrawsAPicture =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.awt..", "javax.swing..", "javax.imageio..");

  @ArchTest
  static final ArchRule nothingAsksTheClock =
      noClasses()
          .should()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(Instant.class, "now")
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Clock.class);

  @ArchTest
  static final ArchRule chanceAlwaysHasASeed =
      noClasses()
          .should()
          .callConstructor(Random.class)
          .orShould()
          .callMethod(Math.class, "random")
          .orShould()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.util.concurrent.ThreadLocalRandom");

  @ArchTest
  static final ArchRule nothingEndsTheProcess =
      noClasses()
          .should()
          .callMethod(System.class, "exit", int.class)
          .orShould()
          .callMethod(Runtime.class, "exit", int.class)
          .orShould()
          .callMethod(Runtime.class, "halt", int.class);

  @ArchTest
  static final ArchRule noStaticIsReassigned =
      fields().that().areStatic().should().beFinal().allowEmptyShould(true);

  @ArchTest
  static final ArchRule recordsHoldNoArrays =
      classes().that().areRecords().should(holdNoArrays()).allowEmptyShould(true);

  @ArchTest
  static final ArchRule everyPackageSaysThatNothingIsNull =
      classes().should(beInANullMarkedPackage());

  private static DescribedPredicate<JavaClass> areFileTypesOfJavaIo() {
    return DescribedPredicate.describe(
        "are file types of java.io",
        type ->
            type.getPackageName().equals("java.io")
                && type.getSimpleName().matches("File|File[A-Z].*|RandomAccessFile"));
  }

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
