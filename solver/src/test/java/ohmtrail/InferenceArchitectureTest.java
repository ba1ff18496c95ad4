package ohmtrail;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.constructors;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaConstructor;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.Set;
import java.util.stream.Collectors;

/** Keeps the rooms of the inference apart. */
@AnalyzeClasses(packages = "ohmtrail.locate", importOptions = DoNotIncludeTests.class)
class InferenceArchitectureTest {
  private static final int MOST_CLASSES = 18;

  @ArchTest
  static final ArchRule theRoomsHaveNoArrowBack =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("answer")
          .definedBy("ohmtrail.locate")
          .layer("search")
          .definedBy("ohmtrail.locate.search")
          .layer("fit")
          .definedBy("ohmtrail.locate.fit")
          .layer("hypothesis")
          .definedBy("ohmtrail.locate.hypothesis")
          .layer("evidence")
          .definedBy("ohmtrail.locate.evidence")
          .layer("settings")
          .definedBy("ohmtrail.locate.settings")
          .whereLayer("answer")
          .mayNotBeAccessedByAnyLayer()
          .whereLayer("search")
          .mayOnlyBeAccessedByLayers("answer")
          .whereLayer("fit")
          .mayOnlyBeAccessedByLayers("answer", "search")
          .whereLayer("hypothesis")
          .mayOnlyBeAccessedByLayers("answer", "search", "fit")
          .whereLayer("evidence")
          .mayOnlyBeAccessedByLayers("answer", "search", "fit", "hypothesis")
          .whereLayer("settings")
          .mayNotAccessAnyLayer()
          .ensureAllClassesAreContainedInArchitecture();

  /**
   * Records and their factories know each other; otherwise classes of the search and of the fits
   * form no circle either.
   */
  @ArchTest
  static final ArchRule noClassesFormACircle =
      slices()
          .assignedFrom(
              new com.tngtech.archunit.library.dependencies.SliceAssignment() {
                @Override
                public com.tngtech.archunit.library.dependencies.SliceIdentifier getIdentifierOf(
                    JavaClass type) {
                  return com.tngtech.archunit.library.dependencies.SliceIdentifier.of(
                      outermost(type).getName());
                }

                @Override
                public String getDescription() {
                  return "top-level classes";
                }
              })
          .should()
          .beFreeOfCycles();

  @ArchTest
  static final ArchRule noRoomIsFull = classes().should(resideInAPackageOfAtMost(MOST_CLASSES));

  /** A constructor keeps what it is given: whoever calls it knows what that costs. */
  @ArchTest
  static final ArchRule constructorsDoNoWork =
      constructors()
          .that()
          .areDeclaredInClassesThat(resideInAPackage("ohmtrail.locate.."))
          .should(callNoMethodOfOhmtrail());

  private static JavaClass outermost(JavaClass type) {
    return type.getEnclosingClass().map(InferenceArchitectureTest::outermost).orElse(type);
  }

  private static ArchCondition<JavaClass> resideInAPackageOfAtMost(int most) {
    return new ArchCondition<>("reside in a package of at most " + most + " classes") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        Set<String> names =
            type.getPackage().getClasses().stream()
                .map(each -> outermost(each).getSimpleName())
                .filter(name -> !name.equals("package-info"))
                .collect(Collectors.toSet());
        events.add(
            new SimpleConditionEvent(
                type, names.size() <= most, type.getPackageName() + " has " + names.size()));
      }
    };
  }

  private static ArchCondition<JavaConstructor> callNoMethodOfOhmtrail() {
    return new ArchCondition<>("call no method of Ohmtrail but what tells a setting or a size") {
      @Override
      public void check(JavaConstructor constructor, ConditionEvents events) {
        for (JavaMethodCall call : constructor.getMethodCallsFromSelf()) {
          JavaClass owner = call.getTargetOwner();
          boolean isOwn = owner.getPackageName().startsWith("ohmtrail");
          boolean isPlain = owner.isRecord() || call.getTarget().getRawParameterTypes().isEmpty();
          events.add(new SimpleConditionEvent(call, !isOwn || isPlain, call.getDescription()));
        }
      }
    };
  }
}
