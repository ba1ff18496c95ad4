package ohmtrail.cli.render;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.cli.render.words.ReadingWords;
import ohmtrail.cli.render.words.Region;
import ohmtrail.locate.Diagnosis;
import ohmtrail.locate.SlipBelief;
import ohmtrail.problem.Slip;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;
import ohmtrail.survey.Test;

/** What may not be as it is written down, and the cheapest way to find out. */
public final class SlipWords {
  /** Less probable slips change nobody's plan. */
  private static final double WORTH_TELLING = 0.15;

  private static final double PROBABLY_WRONG = 0.5;

  private final CaseFile caseFile;

  private SlipWords(CaseFile caseFile) {
    this.caseFile = caseFile;
  }

  /** What was probably not as it is written down, with its check; empty where nothing was. */
  public static Optional<String> first(CaseFile caseFile, Diagnosis diagnosis) {
    return diagnosis
        .likelySlip()
        .map(
            belief ->
                new SlipWords(caseFile).what(belief.slip())
                    + " ("
                    + Figures.probability(belief.ofItsKind())
                    + "). "
                    + check(belief.slip()));
  }

  /** What was possibly not as it is written down, a sentence for each. */
  static List<String> possible(CaseFile caseFile, Diagnosis diagnosis) {
    SlipWords words = new SlipWords(caseFile);
    return diagnosis.slips().stream()
        .filter(belief -> belief.ofItsKind() >= WORTH_TELLING)
        .filter(belief -> diagnosis.likelySlip().filter(belief::equals).isEmpty())
        .filter(belief -> !isSaid(belief, diagnosis))
        .map(
            belief ->
                "Not as written down, perhaps ("
                    + Figures.probability(belief.ofItsKind())
                    + "): "
                    + lowerFirst(words.what(belief.slip()))
                    + ". "
                    + check(belief.slip()))
        .toList();
  }

  /** Of a reading that is probably wrong the answer says so. */
  private static boolean isSaid(SlipBelief belief, Diagnosis diagnosis) {
    return belief.slip() instanceof Slip.OfReading of
        && diagnosis.readings().get(of.reading()).wrongProbability() > PROBABLY_WRONG;
  }

  private static String lowerFirst(String sentence) {
    return sentence.startsWith("The ") || sentence.startsWith("Nothing ")
        ? sentence.substring(0, 1).toLowerCase(Locale.ROOT) + sentence.substring(1)
        : sentence;
  }

  /** What is supposed, in a sentence without a full stop. */
  public static String what(CaseFile caseFile, SlipBelief belief) {
    return new SlipWords(caseFile).what(belief.slip());
  }

  private String what(Slip slip) {
    if (slip instanceof Slip.LoadDidNotDraw off) {
      return "The load " + off.load() + " drew nothing " + in(off.tests());
    }
    if (slip instanceof Slip.LoadDrewLess low) {
      return "The load "
          + low.load()
          + " drew about "
          + Figures.watts(low.watts())
          + " and not what is written, "
          + in(low.tests());
    }
    if (slip instanceof Slip.SupplyMoved moved) {
      return "The supply's voltage was another one from the test '" + moved.test() + "' on";
    }
    if (slip instanceof Slip.NoSupply none) {
      return isFirst(none.test())
          ? "Nothing was live in any test"
          : "Nothing was live from the test '" + none.test() + "' on";
    }
    if (slip instanceof Slip.BoxesExchanged pair) {
      return "The boxes "
          + pair.nearer()
          + " and "
          + pair.farther()
          + " are written down in each other's place";
    }
    if (slip instanceof Slip.BoxElsewhere moved) {
      return "The box " + moved.box() + " comes behind " + moved.after() + " in the run";
    }
    if (slip instanceof Slip.UnlistedLoad load) {
      return "The run fed a load that is not listed, at "
          + load.box()
          + " or near it"
          + (isFirst(load.test()) ? "" : ", from the test '" + load.test() + "' on");
    }
    if (slip instanceof Slip.SharedNeutral shared) {
      return "The neutral carries another circuit's current up to "
          + shared.box()
          + (isFirst(shared.test()) ? "" : ", from the test '" + shared.test() + "' on");
    }
    Slip.OfReading of = (Slip.OfReading) slip;
    Reading reading = reading(of.reading());
    return "The reading of "
        + ReadingWords.figure(reading)
        + " at "
        + reading.box()
        + " is wrong. "
        + instead(of);
  }

  /**
   * What a reading that is probably wrong may be, as a question.
   *
   * @param place of the reading in the survey, from 0
   */
  public static String instead(CaseFile caseFile, Diagnosis diagnosis, int place) {
    return diagnosis
        .instead(place)
        .map(belief -> new SlipWords(caseFile).instead((Slip.OfReading) belief.slip()) + "?")
        .orElse("Mistyped, or read elsewhere?");
  }

  private String instead(Slip.OfReading slip) {
    Reading reading = reading(slip.reading());
    if (slip instanceof Slip.ReadingMistyped typed) {
      return "Typed for " + ReadingWords.figure(reading.showing(typed.meant()));
    }
    if (slip instanceof Slip.ReadingElsewhere elsewhere) {
      return "It reads as " + elsewhere.box() + " would";
    }
    if (slip instanceof Slip.ProbesElsewhere probes) {
      return "It reads as "
          + new ReadingWords(Region.of(caseFile.circuit().supply()))
              .tap(new Tap.Pair(reading.box(), probes.between()))
          + " would";
    }
    return "It reads as the " + ((Slip.OtherMeter) slip).meter() + " would";
  }

  private Reading reading(int place) {
    return caseFile.survey().tests().stream()
        .flatMap(test -> test.readings().stream())
        .skip(place)
        .findFirst()
        .orElseThrow();
  }

  private boolean isFirst(String test) {
    return caseFile.survey().tests().stream()
        .filter(each -> !each.readings().isEmpty())
        .findFirst()
        .filter(each -> each.name().equals(test))
        .isPresent();
  }

  private String in(List<String> tests) {
    if (tests.size() == 1) {
      return "in the test '" + tests.get(0) + "'";
    }
    List<String> loaded =
        caseFile.survey().tests().stream()
            .filter(test -> !caseFile.survey().loadsOn(test).isEmpty())
            .map(Test::name)
            .toList();
    return tests.size() >= loaded.size()
        ? "in any of its tests"
        : "in " + tests.size() + " tests, the first of them '" + tests.get(0) + "'";
  }

  /** The cheapest way to find out. */
  public static String check(Slip slip) {
    if (slip instanceof Slip.LoadDidNotDraw) {
      return "Was it on? Clamp it, or look at its lamp, and take that reading again before any box"
          + " is opened.";
    }
    if (slip instanceof Slip.LoadDrewLess) {
      return "Look at its switch, clamp it, and write down what it draws before any box is opened.";
    }
    if (slip instanceof Slip.SupplyMoved) {
      return "Take one of the readings before it again, with nothing on: that shows where the"
          + " supply stands now.";
    }
    if (slip instanceof Slip.NoSupply) {
      return "Look at the breaker, and at every GFCI or RCD on the way, before any box is opened;"
          + " then read again.";
    }
    if (slip instanceof Slip.BoxesExchanged || slip instanceof Slip.BoxElsewhere) {
      return "With a load on at the one and the meter at the other, then the other way round, the"
          + " readings tell which comes first.";
    }
    if (slip instanceof Slip.UnlistedLoad) {
      return "Unplug and switch off whatever is on, and read again.";
    }
    if (slip instanceof Slip.OfReading) {
      return "Take that reading again before any box is opened.";
    }
    return "Switch the breakers beside this one off, one at a time, and watch whether the reading"
        + " moves.";
  }
}
