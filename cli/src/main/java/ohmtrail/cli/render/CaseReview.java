package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.reference.Assumption;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/** What is missing in a case that would help to find the joint. */
public final class CaseReview {
  private final Circuit circuit;
  private final Survey survey;
  private final Region region;
  private final double lowImpedanceOhms;

  private CaseReview(CaseFile caseFile) {
    this.circuit = caseFile.circuit();
    this.survey = caseFile.survey();
    this.region = Region.of(circuit.supply());
    this.lowImpedanceOhms = caseFile.assumptions().value(Assumption.LOW_IMPEDANCE_LIMIT);
  }

  /**
   * One sentence for each thing that would help, the most telling first; empty when nothing is
   * missing. Without any load on, hardly a joint shows, wherever the meter is held.
   */
  public static List<String> whatWouldHelp(CaseFile caseFile) {
    CaseReview review = new CaseReview(caseFile);
    List<String> hints = new ArrayList<>();
    if (review.isDeadOnly()) {
      review.addUnread(hints);
      review.addLive(hints);
    } else {
      review.addUnloaded(hints);
      review.addUnread(hints);
      review.addHighImpedanceOnly(hints);
    }
    review.addUnknownLengths(hints);
    review.addUnknownLuminaires(hints);
    return List.copyOf(hints);
  }

  /** Whether whatever was read was read with the breaker off. */
  private boolean isDeadOnly() {
    List<Test> read = survey.tests().stream().filter(test -> !test.readings().isEmpty()).toList();
    return !read.isEmpty() && read.stream().allMatch(Test::isDead);
  }

  private void addLive(List<String> hints) {
    hints.add(
        "Read once more with the breaker on and a load, where `next` finds that it does no harm: a"
            + " continuity tester's small current passes joints that fail under load.");
  }

  private void addUnread(List<String> hints) {
    Set<String> read = new HashSet<>();
    survey.tests().forEach(test -> test.readings().forEach(reading -> read.add(reading.box())));
    List<String> unread =
        circuit.boxes().stream()
            .filter(Box::hasReceptacle)
            .map(Box::name)
            .filter(name -> !read.contains(name))
            .toList();
    if (!unread.isEmpty()) {
      hints.add(
          "Read the "
              + (unread.size() == 1 ? region.receptacle() : region.receptacle() + "s")
              + " never read so far: "
              + JointWords.listed(unread, "and")
              + ".");
    }
  }

  private void addUnloaded(List<String> hints) {
    Set<String> carrying = new HashSet<>();
    survey.tests().stream()
        .filter(test -> !test.readings().isEmpty())
        .flatMap(test -> survey.loadsOn(test).stream())
        .forEach(use -> circuit.pathTo(use.box()).forEach(cable -> carrying.add(cable.to())));
    if (carrying.isEmpty()) {
      hints.add(
          "Take readings under a load, where `next` finds that it does no harm: a bad joint shows"
              + " when current flows through it.");
      return;
    }
    List<String> ends =
        circuit.ends().stream()
            .filter(Box::hasReceptacle)
            .map(Box::name)
            .filter(name -> !carrying.contains(name))
            .toList();
    if (!ends.isEmpty()) {
      hints.add(
          "Take a reading under a load farther out, where `next` finds that it does no harm: no"
              + " current has flowed as far as "
              + JointWords.listed(ends, "and")
              + ", so the joints on the way there have not been tried.");
    }
  }

  private void addHighImpedanceOnly(List<String> hints) {
    boolean anyLow =
        survey.tests().stream()
            .flatMap(test -> test.readings().stream())
            .filter(reading -> reading.measurand() == Measurand.VOLTAGE)
            .map(Reading::meter)
            .anyMatch(name -> survey.meter(name).inputOhms() < lowImpedanceOhms);
    if (!anyLow) {
      hints.add(
          "Read once with a low-impedance meter (about 3 kohm): an ordinary one shows full voltage"
              + " through a bad joint, and a ghost voltage behind an open one.");
    }
  }

  /** A luminaire that nothing is known of draws nothing, which no luminaire that is on does. */
  private void addUnknownLuminaires(List<String> hints) {
    Set<String> known =
        Stream.concat(
                survey.hardWired().stream(),
                survey.tests().stream().flatMap(test -> test.loads().stream()))
            .map(LoadInUse::box)
            .collect(Collectors.toSet());
    List<String> unknown =
        circuit.boxes().stream()
            .filter(box -> box.kind().isHardWired() && !known.contains(box.name()))
            .map(Box::name)
            .toList();
    if (!unknown.isEmpty()) {
      hints.add(
          "Say under loads what is wired in at "
              + JointWords.listed(unknown, "and")
              + ", such as 60 W lamp hard-wired at "
              + unknown.get(0)
              + ": until then it counts as taken out.");
    }
  }

  private void addUnknownLengths(List<String> hints) {
    List<String> unknown =
        circuit.cables().stream()
            .filter(cable -> cable.lengthMetres().isEmpty())
            .map(Cable::to)
            .distinct()
            .toList();
    if (!unknown.isEmpty()) {
      hints.add(
          "Estimate the length of the cable to "
              + JointWords.listed(unknown, "and")
              + ": without one the drop of the copper is a guess.");
    }
  }
}
