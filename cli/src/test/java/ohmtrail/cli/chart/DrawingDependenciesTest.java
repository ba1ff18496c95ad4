package ohmtrail.cli.chart;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import ohmtrail.cli.chart.canvas.RasterCanvas;

/** Keeps AWT, which is slow to start, away from everything but PNG and the plots of XChart. */
@AnalyzeClasses(packages = "ohmtrail.cli.chart", importOptions = DoNotIncludeTests.class)
class DrawingDependenciesTest {

  @ArchTest
  static final ArchRule onlyPixelsAndTheLibrarysPlotsNeedAwt =
      noClasses()
          .that()
          .doNotBelongToAnyOf(RasterCanvas.class, CalibrationPlot.class)
          .and()
          .resideOutsideOfPackage("ohmtrail.cli.chart.plot")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.awt..", "javax.swing..", "javax.imageio..");

  @ArchTest
  static final ArchRule theSheetKnowsNothingOfCircuits =
      noClasses()
          .that()
          .resideInAPackage("ohmtrail.cli.chart.canvas")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "ohmtrail.cli.chart",
              "ohmtrail.cli.casefile..",
              "ohmtrail.circuit..",
              "ohmtrail.survey..",
              "ohmtrail.predict..",
              "ohmtrail.locate..");

  @ArchTest
  static final ArchRule calibrationIsDrawnFromPlainFigures =
      noClasses()
          .that()
          .resideInAPackage("ohmtrail.cli.chart..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("ohmtrail.practice..");
}
