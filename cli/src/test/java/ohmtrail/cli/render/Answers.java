package ohmtrail.cli.render;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import ohmtrail.circuit.Box;
import ohmtrail.circuit.Cable;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.JointKind;
import ohmtrail.circuit.Supply;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.Problem;
import ohmtrail.locate.BestFit;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.FittedParameter;
import ohmtrail.locate.FittedReading;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.locate.Probabilities;
import ohmtrail.locate.RankedBox;
import ohmtrail.locate.Suspect;
import ohmtrail.locate.Verdict;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.Parameter;
import ohmtrail.predict.Parameters;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.reference.Conductor;
import ohmtrail.reference.ConductorMaterial;
import ohmtrail.reference.ConductorSize;
import ohmtrail.report.Report;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.ProbePoints;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.HeatingElement;

/**
 * Cases and answers made up to be rendered. The answers are set by hand: how likely they are is no
 * matter here, only how they are told.
 */
public final class Answers {
  /** A fork at hall-1: hall-2, bed-1 and bed-2 on one branch, the bath on the other. */
  public static final CaseFile HALL = hall(Supply.NORTH_AMERICA_120, "14 AWG", 15);

  /** The same in the words of IEC 60364. */
  public static final CaseFile HALL_IEC = hall(Supply.IEC_230, "2.5 mm2", 16);

  private Answers() {}

  private static CaseFile hall(Supply supply, String size, double amperes) {
    Conductor conductor =
        new Conductor(ConductorSize.parse(size).orElseThrow(), ConductorMaterial.COPPER);
    Circuit circuit =
        new Circuit(
            supply,
            amperes,
            List.of(
                Box.panel("panel"),
                Box.feedThrough("hall-1", JointKind.PUSH_IN),
                Box.feedThrough("hall-2", JointKind.PUSH_IN),
                Box.feedThrough("bed-1", JointKind.SCREW),
                Box.pigtail("bed-2"),
                Box.feedThrough("bath", JointKind.SCREW)),
            List.of(
                Cable.of("panel", "hall-1", 7.62, conductor),
                Cable.of("hall-1", "hall-2", 3.66, conductor),
                Cable.of("hall-2", "bed-1", 5.18, conductor),
                Cable.of("bed-1", "bed-2", 4.27, conductor),
                Cable.of("hall-1", "bath", 3.05, conductor)));
    double volts = supply.volts();
    return new CaseFile(
        "hall and bedrooms",
        circuit,
        survey(volts),
        Assumptions.defaults().with(Assumption.WEIGHT_PUSH_IN, 4),
        List.of(new Problem("hall.yaml", 12, 5, "Cable to bath: 14 AWG is unusual here")));
  }

  private static Survey survey(double volts) {
    LoadInUse heater = new LoadInUse("heater", "bed-2");
    return new Survey(
        List.of(Meter.highImpedance("dmm"), Meter.lowImpedance("low-z")),
        List.of(new HeatingElement("heater", 1500, volts)),
        List.of(
            new Test(
                "idle",
                List.of(),
                List.of(
                    new Reading("bed-1", ProbePoints.HOT_NEUTRAL, "dmm", 1.008 * volts),
                    new Reading("bed-2", ProbePoints.HOT_NEUTRAL, "low-z", 1.007 * volts))),
            new Test(
                "heater on",
                List.of(heater),
                List.of(
                    new Reading("hall-2", ProbePoints.HOT_NEUTRAL, "dmm", 0.987 * volts),
                    new Reading("bed-1", ProbePoints.HOT_NEUTRAL, "dmm", 0.776 * volts),
                    new Reading("bed-1", ProbePoints.NEUTRAL_GROUND, "dmm", 0.21 * volts)))));
  }

  /** The same case with nothing read yet. */
  public static CaseFile unread(CaseFile caseFile) {
    return new CaseFile(
        caseFile.title(),
        caseFile.circuit(),
        new Survey(List.of(), List.of(), List.of()),
        caseFile.assumptions(),
        List.of());
  }

  /** The same case with a box that takes long to open. */
  public static CaseFile slow(CaseFile caseFile, String box, double minutes) {
    Circuit circuit = caseFile.circuit();
    List<Box> boxes =
        circuit.boxes().stream()
            .map(each -> each.name().equals(box) ? each.opening(OptionalDouble.of(minutes)) : each)
            .toList();
    return new CaseFile(
        caseFile.title(),
        new Circuit(circuit.supply(), circuit.breakerAmperes(), boxes, circuit.cables()),
        caseFile.survey(),
        caseFile.assumptions(),
        List.of());
  }

  /** The same case with the idle test alone. */
  public static CaseFile idleOnly(CaseFile caseFile) {
    Survey survey = caseFile.survey();
    return new CaseFile(
        caseFile.title(),
        caseFile.circuit(),
        new Survey(survey.meters(), survey.loads(), survey.tests().subList(0, 1)),
        caseFile.assumptions(),
        List.of());
  }

  /** An answer in full that keeps the invented figures beside its readings. */
  public static Report report(CaseFile caseFile, Diagnosis diagnosis) {
    Report full = Report.of(caseFile.problem(), diagnosis);
    return new Report(
        full.problem(),
        diagnosis.withVerdict(full.diagnosis().verdict()),
        full.at(),
        full.soundAt(),
        full.opening(),
        full.suspects(),
        full.danger(),
        full.tests(),
        full.ghosts(),
        full.missing(),
        full.cautions(),
        full.withoutFinds());
  }

  /** One joint stands out. */
  public static Diagnosis oneJoint(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("bed-1", 0.87)
        .box("hall-2", 0.1)
        .suspect(interval(2.4, 1.9, 3.1), 1, joint("bed-1/neutral/incoming", 0.87))
        .suspect(interval(9.6, 8.2, 11.3), 1, joint("hall-2/hot/outgoing", 0.1))
        .rest(0.02, 0.01)
        .best("bed-1/neutral/incoming", 2.4)
        .degraded();
  }

  /** The two ends of a cable cannot be told apart. */
  public static Diagnosis twoEnds(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("hall-2", 0.6)
        .box("bed-1", 0.385)
        .suspect(
            interval(2.4, 1.9, 3.1),
            1.02,
            joint("hall-2/neutral/outgoing", 0.6),
            joint("bed-1/neutral/incoming", 0.31))
        .suspect(
            interval(9.6, 8.2, 11.3),
            3.4,
            joint("bed-1/hot/incoming", 0.05),
            joint("bed-1/hot/contact", 0.025))
        .rest(0.01, 0.005)
        .best("hall-2/neutral/outgoing", 2.4)
        .degraded();
  }

  /** Nothing at all tells the two ends of a cable apart. */
  public static Diagnosis equalEnds(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("hall-2", 0.48)
        .box("bed-1", 0.48)
        .suspect(
            interval(2.4, 1.9, 3.1),
            1,
            joint("bed-1/neutral/incoming", 0.48),
            joint("hall-2/neutral/outgoing", 0.48))
        .rest(0.02, 0.02)
        .best("bed-1/neutral/incoming", 2.4)
        .degraded();
  }

  /** The first box holds less of the first suspect than the second box does. */
  public static Diagnosis firstForOtherReasons(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("hall-2", 0.55)
        .box("bed-1", 0.38)
        .suspect(
            interval(2.4, 1.9, 3.1),
            1,
            joint("bed-1/neutral/incoming", 0.38),
            joint("hall-2/neutral/outgoing", 0.28))
        .suspect(interval(2.4, 1.9, 3.1), 1, joint("hall-2/neutral/incoming", 0.27))
        .rest(0.05, 0.02)
        .best("bed-1/neutral/incoming", 2.4)
        .degraded();
  }

  /** A neutral that may as well be open. */
  public static Diagnosis lostNeutral(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("bed-2", 0.995)
        .suspect(
            new OhmsInterval(
                OptionalDouble.empty(), OptionalDouble.of(21_000), OptionalDouble.empty(), 0.9),
            1,
            joint("bed-2/neutral/tail", 0.995))
        .rest(0.001, 0.004)
        .best("bed-2/neutral/tail", Double.POSITIVE_INFINITY)
        .degraded();
  }

  /** A ground that nothing but a fault needs. */
  public static Diagnosis lostGround(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("bath", 0.9)
        .suspect(interval(1200, 800, 2100), 1, joint("bath/ground/incoming", 0.9))
        .rest(0.1, 0)
        .best("bath/ground/incoming", 1200)
        .degraded();
  }

  /** Before the panel, where a one-leg supply does not tell hot from neutral. */
  public static Diagnosis supplySide(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("panel", 0.96)
        .suspect(
            interval(1.5, 1.2, 1.9),
            1,
            joint("panel/hot/supply", 0.48),
            joint("panel/neutral/supply", 0.48))
        .rest(0.04, 0)
        .best("panel/hot/supply", 1.5)
        .degraded();
  }

  /** Nothing stands out. */
  public static Diagnosis unsettled(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("hall-1", 0.34)
        .box("panel", 0.26)
        .box("bath", 0.2)
        .suspect(
            interval(0.08, 0.03, 0.2),
            1.1,
            joint("hall-1/hot/incoming", 0.34),
            joint("panel/hot/outgoing", 0.12))
        .suspect(interval(0.09, 0.03, 0.2), 1, joint("bath/hot/incoming", 0.2))
        .suspect(interval(0.1, 0.04, 0.2), 1, joint("panel/neutral/outgoing", 0.14))
        .rest(0.15, 0.05)
        .best("hall-1/hot/incoming", 0.08)
        .degraded();
  }

  /** The box to open holds none of the joints of the first suspect. */
  public static Diagnosis scattered(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("hall-1", 0.45)
        .box("bath", 0.3)
        .suspect(interval(0.5, 0.3, 0.8), 1, joint("bath/hot/incoming", 0.3))
        .suspect(interval(0.5, 0.3, 0.8), 1, joint("hall-1/hot/outgoing/bath", 0.25))
        .suspect(interval(0.5, 0.3, 0.8), 1, joint("hall-1/neutral/outgoing/bath", 0.2))
        .rest(0.2, 0.05)
        .best("bath/hot/incoming", 0.5)
        .degraded();
  }

  /** Two joints are bad at once. */
  public static Diagnosis twoBadJoints(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("bed-1", 0.9)
        .box("bath", 0.88)
        .suspect(
            new OhmsInterval(
                OptionalDouble.empty(), OptionalDouble.of(21e3), OptionalDouble.empty(), 0.9),
            1,
            joint("bath/hot/contact", 0.88))
        .suspect(
            interval(2.4, 1.9, 3.1),
            1,
            joint("bed-1/neutral/incoming", 0.61),
            joint("hall-2/neutral/outgoing", 0.24))
        .rest(0.01, 0.01)
        .several(0.85)
        .best("bed-1/neutral/incoming", 2.4)
        .best("bath/hot/contact", Double.POSITIVE_INFINITY)
        .degraded();
  }

  /** One joint leads, though the likeliest single explanation has two. */
  public static Diagnosis perhapsTwo(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("bed-1", 0.9)
        .suspect(interval(2.4, 1.9, 3.1), 1, joint("bed-1/neutral/incoming", 0.9))
        .rest(0.05, 0.05)
        .several(0.3)
        .best("bed-1/neutral/incoming", 2.4)
        .best("bath/hot/contact", Double.POSITIVE_INFINITY)
        .degraded();
  }

  /** The joint's ohms are others with nothing on than under load. */
  public static Diagnosis unstable(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("bed-1", 0.95)
        .suspect(interval(0.8, 0.6, 7.4), 1, joint("bed-1/neutral/incoming", 0.95))
        .rest(0.02, 0.01)
        .unstable(0.72)
        .best("bed-1/neutral/incoming", 6.1)
        .best("bed-1/neutral/incoming", 0.8)
        .degraded();
  }

  /** Something that was stated is far off. */
  public static Diagnosis strained(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("bed-1", 0.95)
        .suspect(interval(2.4, 1.9, 3.1), 1, joint("bed-1/neutral/incoming", 0.95))
        .rest(0.02, 0.01)
        .unstable(0.2)
        .best("bed-1/neutral/incoming", 2.4)
        .pulled(2, -2.6)
        .degraded();
  }

  /** One reading does not fit and is given up. */
  public static Diagnosis oneWrongReading(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("bed-1", 0.9)
        .suspect(interval(2.4, 1.9, 3.1), 1, joint("bed-1/neutral/incoming", 0.9))
        .rest(0.05, 0.05)
        .best("bed-1/neutral/incoming", 2.4)
        .wrong(4, 0.97)
        .degraded();
  }

  /** Copper explains it. */
  public static Diagnosis healthy(CaseFile caseFile) {
    return new Answer(caseFile).box("bed-1", 0.03).rest(0.96, 0.01).as(Verdict.HEALTHY);
  }

  /** Nothing explains it. */
  public static Diagnosis unexplained(CaseFile caseFile) {
    return new Answer(caseFile)
        .box("bed-1", 0.05)
        .suspect(interval(2.4, 1.9, 3.1), 1, joint("bed-1/neutral/incoming", 0.05))
        .rest(0.01, 0.94)
        .wrong(3, 0.6)
        .as(Verdict.UNEXPLAINED);
  }

  private static OhmsInterval interval(double estimate, double low, double high) {
    return new OhmsInterval(
        OptionalDouble.of(estimate), OptionalDouble.of(low), OptionalDouble.of(high), 0.9);
  }

  private static JointShare joint(String id, double probability) {
    return new JointShare(id, probability);
  }

  private record JointShare(String id, double probability) {}

  /** Puts an answer together. */
  private static final class Answer {
    private static final double OFF_BY_SIGMAS = 0.8;
    private static final double FAR_OFF_SIGMAS = 40;
    private static final double SIGMA_VOLTS = 0.176;

    private final CaseFile caseFile;
    private final List<RankedBox> boxes = new ArrayList<>();
    private final List<Suspect> suspects = new ArrayList<>();
    private final List<Degradation> best = new ArrayList<>();
    private double healthy;
    private double unexplained;
    private int wrongReading = -1;
    private double wrongProbability;
    private double several;
    private double unstable;
    private final List<Double> pulls = new ArrayList<>(List.of(0.3, 1.2, 0.0, -0.9));

    Answer(CaseFile caseFile) {
      this.caseFile = caseFile;
    }

    Answer box(String name, double probability) {
      boxes.add(new RankedBox(name, probability));
      return this;
    }

    Answer suspect(OhmsInterval ohms, double spread, JointShare... shares) {
      List<JointShare> all = List.of(shares);
      suspects.add(
          new Suspect(
              all.stream()
                  .map(share -> caseFile.circuit().joint(share.id()).orElseThrow())
                  .toList(),
              all.stream().map(JointShare::probability).toList(),
              all.stream().mapToDouble(JointShare::probability).sum(),
              ohms,
              spread));
      return this;
    }

    Answer rest(double healthyProbability, double unexplainedProbability) {
      healthy = healthyProbability;
      unexplained = unexplainedProbability;
      return this;
    }

    Answer best(String joint, double ohms) {
      best.add(new Degradation(joint, ohms));
      return this;
    }

    Answer wrong(int reading, double probability) {
      wrongReading = reading;
      wrongProbability = probability;
      return this;
    }

    Answer several(double probability) {
      several = probability;
      return this;
    }

    Answer unstable(double probability) {
      unstable = probability;
      return this;
    }

    Answer pulled(int parameter, double pull) {
      pulls.set(parameter, pull);
      return this;
    }

    Diagnosis degraded() {
      return as(Verdict.DEGRADED);
    }

    Diagnosis as(Verdict verdict) {
      caseFile.circuit().boxes().stream()
          .map(Box::name)
          .filter(name -> boxes.stream().noneMatch(box -> box.box().equals(name)))
          .forEach(name -> box(name, 0.001));
      Parameters parameters =
          Parameters.of(caseFile.circuit(), caseFile.survey(), caseFile.assumptions());
      return new Diagnosis(
          verdict,
          new Probabilities(healthy, unexplained, several, unstable),
          boxes,
          suspects,
          new BestFit(
              readings(), fitted(parameters), best, Collections.nCopies(parameters.size(), 0.0)),
          Stream.of(Assumption.values())
              .filter(each -> !each.isAboutHarm() && !each.isAboutMaps())
              .toList());
    }

    private List<FittedReading> readings() {
      List<FittedReading> readings = new ArrayList<>();
      for (Test test : caseFile.survey().tests()) {
        for (Reading reading : test.readings()) {
          boolean wrong = readings.size() == wrongReading;
          double off = (wrong ? FAR_OFF_SIGMAS : OFF_BY_SIGMAS) * SIGMA_VOLTS;
          readings.add(
              new FittedReading(
                  test.name(),
                  reading,
                  caseFile.circuit().supply().volts(),
                  reading.value() - off,
                  off,
                  SIGMA_VOLTS,
                  wrong ? wrongProbability : 0.001));
        }
      }
      return readings;
    }

    /** The first few moved, the others where they were. */
    private List<FittedParameter> fitted(Parameters parameters) {
      List<FittedParameter> fitted = new ArrayList<>();
      for (Parameter parameter : parameters.all()) {
        double pull = fitted.size() < pulls.size() ? pulls.get(fitted.size()) : 0;
        fitted.add(
            new FittedParameter(parameter, parameter.nominal() * parameter.factor(pull), pull));
      }
      return fitted;
    }
  }
}
