package ohmtrail.advise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.IntStream;
import ohmtrail.advise.Lookahead.Simulated;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.ReadingError;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;

/**
 * Puts the simulated outcomes of a visit into a few bands of one figure, so that a person can read
 * off beforehand what the reading would mean. The figure and the bounds are those that leave the
 * least to be decided: the sum over the bands of probability times the entropy of the boxes.
 */
final class Bands {
  private static final int MOST_BANDS = 3;

  /** A further band must take away at least so much of the entropy, in nats. */
  private static final double LEAST_GAIN = 0.12;

  /** Halvings of the gap between two outcomes: of 100 V it leaves 0.1 V. */
  private static final int BISECTIONS = 10;

  /** A band of less than this is no case of its own. */
  private static final double LEAST_SHARE = 0.04;

  private final List<Simulated> samples;
  private final List<String> boxes;
  private final Survey survey;
  private final Function<List<Double>, Simulated> posterior;

  private Bands(
      List<Simulated> samples,
      List<String> boxes,
      Survey survey,
      Function<List<Double>, Simulated> posterior) {
    this.samples = samples;
    this.boxes = boxes;
    this.survey = survey;
    this.posterior = posterior;
  }

  /** A figure and how it is had from the readings. */
  private record Axis(Outcome.Figure figure, int reading, int from) {
    double of(Simulated sample) {
      double value = sample.values().get(reading);
      return from < 0 ? value : sample.values().get(from) - value;
    }

    Reading ofReading() {
      return figure.reading();
    }
  }

  /** A cut of the samples along an axis. */
  private record Cut(Axis axis, List<Double> bounds, double entropy) {}

  /**
   * The outcomes of a visit, from the lowest figure to the highest.
   *
   * @param posterior what given readings would mean
   */
  static List<Outcome> of(
      Choice.Read visit,
      List<Simulated> samples,
      List<String> boxes,
      Survey survey,
      Function<List<Double>, Simulated> posterior) {
    Bands bands = new Bands(samples, boxes, survey, posterior);
    Cut best =
        axes(visit).stream()
            .map(bands::cut)
            .min(Comparator.comparingDouble(Cut::entropy))
            .orElseThrow();
    return bands.outcomes(best);
  }

  private static List<Axis> axes(Choice.Read visit) {
    List<Axis> axes = new ArrayList<>();
    List<Reading> readings = visit.readings();
    List<Boolean> loaded = new ArrayList<>();
    for (Test test : visit.tests()) {
      test.readings().forEach(reading -> loaded.add(!test.loads().isEmpty()));
    }
    for (int r = readings.size() - 1; r >= 0; r--) {
      Reading reading = readings.get(r);
      axes.add(new Axis(new Outcome.Figure(reading, loaded.get(r), Optional.empty()), r, -1));
      for (int f = 0; f < r; f++) {
        boolean falls = loaded.get(r) && !loaded.get(f) && reading.measurand() == Measurand.VOLTAGE;
        if (falls && readings.get(f).tap().equals(reading.tap())) {
          axes.add(
              0, new Axis(new Outcome.Figure(reading, true, Optional.of(readings.get(f))), r, f));
        }
      }
    }
    return axes;
  }

  private Cut cut(Axis axis) {
    List<Simulated> sorted = samples.stream().sorted(Comparator.comparingDouble(axis::of)).toList();
    List<Integer> cuts = new ArrayList<>(List.of(0, sorted.size()));
    double entropy = entropy(sorted, 0, sorted.size());
    while (cuts.size() - 1 < MOST_BANDS) {
      int best = -1;
      double least = entropy - LEAST_GAIN;
      for (int at = 1; at < sorted.size(); at++) {
        double with = at(sorted, cuts, at);
        if (with < least) {
          least = with;
          best = at;
        }
      }
      if (best < 0) {
        break;
      }
      cuts.add(best);
      cuts.sort(Comparator.naturalOrder());
      entropy = least;
    }
    List<Double> bounds = new ArrayList<>();
    for (int c = 1; c < cuts.size() - 1; c++) {
      int at = cuts.get(c);
      int low = likeliest(sorted.subList(cuts.get(c - 1), at));
      int high = likeliest(sorted.subList(at, cuts.get(c + 1)));
      bounds.add(turn(axis, sorted.get(at - 1), sorted.get(at), low, high));
    }
    return new Cut(axis, bounds, entropy);
  }

  /** The place that is likeliest in some outcomes; that behind the last for a sound circuit. */
  private int likeliest(List<Simulated> within) {
    Mean mean = Mean.of(within, boxes.size());
    int best = boxes.size();
    double most = mean.healthy;
    for (int b = 0; b < mean.masses.length; b++) {
      if (mean.masses[b] > most) {
        most = mean.masses[b];
        best = b;
      }
    }
    return best;
  }

  /**
   * Between two neighbouring outcomes, where the answer turns from the place that is likeliest
   * below to the one above; half way where it does not turn between them.
   */
  private double turn(Axis axis, Simulated below, Simulated above, int low, int high) {
    double half = between(axis, axis.of(below), axis.of(above));
    if (low == high || below.lead(low, high) < 0 || above.lead(low, high) > 0) {
      return half;
    }
    Simulated near = below;
    Simulated far = above;
    for (int step = 0; step < BISECTIONS; step++) {
      Simulated middle = posterior.apply(middle(near.values(), far.values()));
      if (middle.lead(low, high) > 0) {
        near = middle;
      } else {
        far = middle;
      }
    }
    return between(axis, axis.of(near), axis.of(far));
  }

  private static List<Double> middle(List<Double> one, List<Double> other) {
    return IntStream.range(0, one.size())
        .mapToObj(place -> 0.5 * (one.get(place) + other.get(place)))
        .toList();
  }

  /** Half way; of ohms, which reach over decades, on a logarithmic scale. */
  private static double between(Axis axis, double low, double high) {
    boolean byRatio = !axis.ofReading().measurand().followsSupply() && low > 0;
    return byRatio ? Math.sqrt(low * high) : 0.5 * (low + high);
  }

  /** The entropy with one more cut; infinite where it would leave a band too small. */
  private double at(List<Simulated> sorted, List<Integer> cuts, int cut) {
    double sum = 0;
    for (int c = 0; c + 1 < cuts.size(); c++) {
      int from = cuts.get(c);
      int to = cuts.get(c + 1);
      if (from < cut && cut < to) {
        double least = LEAST_SHARE * sorted.size();
        if (cut - from < least || to - cut < least) {
          return Double.POSITIVE_INFINITY;
        }
        sum += entropy(sorted, from, cut) + entropy(sorted, cut, to);
      } else if (cut == from && c > 0) {
        return Double.POSITIVE_INFINITY;
      } else {
        sum += entropy(sorted, from, to);
      }
    }
    return sum;
  }

  /** Probability of a band times the entropy of the boxes, and of a sound circuit, within it. */
  private double entropy(List<Simulated> sorted, int from, int to) {
    Mean mean = Mean.of(sorted.subList(from, to), boxes.size());
    double entropy = -surprise(mean.healthy);
    for (double mass : mean.masses) {
      entropy -= surprise(mass);
    }
    return entropy * (to - from) / sorted.size();
  }

  private static double surprise(double probability) {
    return probability > 0 ? probability * Math.log(probability) : 0;
  }

  private List<Outcome> outcomes(Cut cut) {
    List<Outcome> outcomes = new ArrayList<>();
    for (int band = 0; band <= cut.bounds().size(); band++) {
      OptionalDouble above =
          band == 0 ? OptionalDouble.empty() : OptionalDouble.of(cut.bounds().get(band - 1));
      OptionalDouble below =
          band == cut.bounds().size()
              ? OptionalDouble.empty()
              : OptionalDouble.of(cut.bounds().get(band));
      List<Simulated> within =
          samples.stream()
              .filter(each -> cut.axis().of(each) >= above.orElse(Double.NEGATIVE_INFINITY))
              .filter(each -> cut.axis().of(each) < below.orElse(Double.POSITIVE_INFINITY))
              .toList();
      Mean mean = Mean.of(within, boxes.size());
      outcomes.add(
          new Outcome(
              Optional.of(cut.axis().figure()),
              shown(cut.axis(), above),
              shown(cut.axis(), below),
              within.size() / (double) samples.size(),
              mean.healthy,
              ranked(boxes, mean.masses),
              within.stream().mapToDouble(Simulated::minutes).average().orElse(0)));
    }
    return outcomes;
  }

  /** A bound as the meter would show it. */
  private OptionalDouble shown(Axis axis, OptionalDouble bound) {
    Meter meter = survey.meter(axis.ofReading().meter());
    return bound.isEmpty()
        ? bound
        : OptionalDouble.of(ReadingError.shown(bound.getAsDouble(), meter));
  }

  /** Boxes with their probabilities, the most probable first. */
  static List<Outcome.LikelyBox> ranked(List<String> boxes, double[] masses) {
    List<Outcome.LikelyBox> ranked = new ArrayList<>();
    for (int b = 0; b < masses.length; b++) {
      ranked.add(new Outcome.LikelyBox(boxes.get(b), masses[b]));
    }
    ranked.sort(Comparator.comparingDouble(Outcome.LikelyBox::probability).reversed());
    return ranked;
  }

  /** The mean of some outcomes. */
  private static final class Mean {
    private final double[] masses;
    private double healthy;

    private Mean(int boxes) {
      this.masses = new double[boxes];
    }

    static Mean of(List<Simulated> samples, int boxes) {
      Mean mean = new Mean(boxes);
      for (Simulated sample : samples) {
        mean.healthy += sample.healthy() / samples.size();
        for (int b = 0; b < boxes; b++) {
          mean.masses[b] += sample.masses().get(b) / samples.size();
        }
      }
      return mean;
    }
  }
}
