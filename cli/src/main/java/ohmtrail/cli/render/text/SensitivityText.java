package ohmtrail.cli.render.text;

import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.SensitivityWords;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.reference.Assumption;
import ohmtrail.sensitivity.AssumptionEffect;
import ohmtrail.sensitivity.Rival;
import ohmtrail.sensitivity.Sensitivity;
import ohmtrail.sensitivity.WithoutReading;

/** How far an answer hangs on what it was given, as text. */
public final class SensitivityText {
  private static final int MOST_RIVALS = 12;

  private SensitivityText() {}

  /** Writes it. */
  public static String of(CaseFile caseFile, Sensitivity sensitivity) {
    SensitivityWords words = new SensitivityWords(caseFile);
    Page page = new Page();
    page.paragraph("As everything is stated: " + words.conclusion(sensitivity.stated()) + ".");
    writeAssumptions(page, sensitivity);
    page.heading("All of them together").indented(SensitivityWords.together(sensitivity));
    writeReadings(page, caseFile, sensitivity, words);
    writeRivals(page, caseFile, sensitivity);
    return page.toString();
  }

  private static void writeAssumptions(Page page, Sensitivity sensitivity) {
    List<AssumptionEffect> telling =
        sensitivity.effects().stream().filter(AssumptionEffect::hasEffect).toList();
    page.heading("Each assumption alone, over its range, the most telling first");
    if (telling.isEmpty()) {
      page.indented("none changes anything by as much as is printed");
    } else {
      Table table =
          new Table()
              .words("")
              .numbers("from")
              .numbers("to")
              .numbers("ohms")
              .numbers("to")
              .numbers("sure")
              .numbers("to")
              .words("what changes");
      telling.forEach(effect -> table.row(cells(effect)));
      page.table(table);
    }
    page.heading("Without effect over their ranges")
        .indented(
            String.join(", ", sensitivity.withoutEffect().stream().map(Assumption::key).toList()));
  }

  private static List<String> cells(AssumptionEffect effect) {
    return List.of(
        effect.range().assumption().key(),
        Figures.number(effect.range().low()),
        Figures.number(effect.range().high()),
        effect.atLow().estimate().isPresent()
            ? Figures.hundredths(effect.atLow().estimate().getAsDouble())
            : "-",
        effect.atHigh().estimate().isPresent()
            ? Figures.hundredths(effect.atHigh().estimate().getAsDouble())
            : "-",
        Figures.probability(effect.atLow().probability()),
        Figures.probability(effect.atHigh().probability()),
        SensitivityWords.turning(effect));
  }

  private static void writeReadings(
      Page page, CaseFile caseFile, Sensitivity sensitivity, SensitivityWords words) {
    ReadingWords readings = new ReadingWords(Region.of(caseFile.circuit().supply()));
    List<WithoutReading> telling =
        sensitivity.withoutReading().stream().filter(each -> each.change().any()).toList();
    page.heading("Without any one reading");
    for (WithoutReading each : telling) {
      page.item(
          "without "
              + readings.where(each.reading())
              + " in test "
              + each.test()
              + ": "
              + words.conclusion(each.conclusion()));
    }
    int rest = sensitivity.withoutReading().size() - telling.size();
    page.indented(
        telling.isEmpty()
            ? "Each of the " + rest + " readings can be left out: the conclusion stays."
            : "The other " + rest + " can be left out, one at a time: the conclusion stays.");
  }

  private static void writeRivals(Page page, CaseFile caseFile, Sensitivity sensitivity) {
    if (sensitivity.rivals().isEmpty()) {
      return;
    }
    JointWords joints = new JointWords(caseFile.circuit());
    page.heading("Rivals above a millionth, and the reading that speaks most against each");
    for (Rival rival : sensitivity.rivals().stream().limit(MOST_RIVALS).toList()) {
      page.item(joints.suspect(rival.suspect(), "") + rivalWords(caseFile, sensitivity, rival));
    }
    int rest = sensitivity.rivals().size() - MOST_RIVALS;
    if (rest > 0) {
      page.indented("and " + rest + " more");
    }
  }

  private static String rivalWords(CaseFile caseFile, Sensitivity sensitivity, Rival rival) {
    ReadingWords readings = new ReadingWords(Region.of(caseFile.circuit().supply()));
    StringBuilder words =
        new StringBuilder(": " + Figures.number(100 * rival.suspect().probability()) + " %");
    rival
        .bayesFactor()
        .ifPresent(
            factor ->
                words.append(
                    "; all that was read is "
                        + Figures.twoDigits(factor)
                        + " times likelier under the answer"));
    rival
        .excluding()
        .ifPresent(
            excluding -> {
              WithoutReading reading = sensitivity.withoutReading().get(excluding.index());
              words.append(
                  ", of which "
                      + readings.where(reading.reading())
                      + " in test "
                      + reading.test()
                      + " alone "
                      + Figures.twoDigits(excluding.bayesFactor())
                      + " times");
            });
    return words.toString();
  }
}
