package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.JointWords;
import ohmtrail.cli.render.words.OhmsWords;
import ohmtrail.locate.Verdict;
import ohmtrail.sensitivity.AssumptionEffect;
import ohmtrail.sensitivity.AssumptionEffect.TurningPoint;
import ohmtrail.sensitivity.Change;
import ohmtrail.sensitivity.Conclusion;
import ohmtrail.sensitivity.Sensitivity;
import ohmtrail.sensitivity.Together;

/** What is said of how far an answer hangs on what it was given. */
public final class SensitivityWords {
  private final JointWords joints;

  /** For a case. */
  public SensitivityWords(CaseFile caseFile) {
    this.joints = new JointWords(caseFile.circuit());
  }

  /** A conclusion in half a sentence. */
  public String conclusion(Conclusion conclusion) {
    String share = Figures.probability(conclusion.probability());
    return conclusion
        .suspect()
        .map(
            suspect ->
                joints.suspect(suspect, "") + ", " + OhmsWords.of(suspect.ohms()) + ", " + share)
        .orElseGet(
            () ->
                conclusion.verdict() == Verdict.UNEXPLAINED
                    ? "nothing on offer explains the readings, " + share
                    : "no joint need be bad, " + share);
  }

  /** The ohms of a conclusion: an estimate, a bound, or none. */
  public static String ohms(Conclusion conclusion) {
    return conclusion.suspect().map(suspect -> OhmsWords.of(suspect.ohms())).orElse("none");
  }

  /** What changes, in a few words; nothing where nothing does. */
  public static String change(Change change) {
    List<String> changes = new ArrayList<>();
    if (change.verdict()) {
      changes.add("the verdict");
    }
    if (change.box()) {
      changes.add("the box");
    }
    if (change.conductor()) {
      changes.add("the conductor");
    }
    if (change.ohms()) {
      changes.add("the ohms");
    }
    return JointWords.listed(changes, "and");
  }

  /**
   * From which value on something changes: "from 0.007 on the ohms"; nothing where nothing does.
   */
  public static String turning(AssumptionEffect effect) {
    List<String> turnings = new ArrayList<>();
    turning(effect.below(), "below").ifPresent(turnings::add);
    turning(effect.above(), "above").ifPresent(turnings::add);
    return String.join("; ", turnings);
  }

  private static Optional<String> turning(Optional<TurningPoint> turning, String side) {
    return turning.map(
        point -> change(point.change()) + " " + side + " about " + Figures.number(point.value()));
  }

  /** What all assumptions together do, in sentences. */
  public static String together(Sensitivity sensitivity) {
    Together together = sensitivity.together();
    if (together.draws() == 0) {
      return "No assumption changes anything that is printed, so they were not drawn together.";
    }
    StringBuilder words =
        new StringBuilder(
            "The "
                + together.varied().size()
                + " assumptions that change anything, drawn together "
                + together.draws()
                + " times (Latin hypercube, evenly over their ranges, seed "
                + together.seed()
                + "): the verdict stays in "
                + Figures.share(together.sameVerdict())
                + " of the draws, the box in "
                + Figures.share(together.sameBox())
                + ", the conductor in "
                + Figures.share(together.sameConductor())
                + ", and the ohms stay within the stated interval in "
                + Figures.share(together.sameOhms())
                + ".");
    together
        .ohms()
        .ifPresent(
            ohms ->
                words.append(
                    " Nine draws in ten put the ohms between "
                        + Figures.estimatedOhms(ohms.low())
                        + " and "
                        + Figures.estimatedOhms(ohms.high())
                        + "."));
    return words.toString();
  }
}
