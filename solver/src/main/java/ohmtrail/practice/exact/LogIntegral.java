package ohmtrail.practice.exact;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.PriorityQueue;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;

/**
 * The integral of exp(f) over an interval, for an f that is smooth but may rise and fall by
 * hundreds. Follows every rise that shows at the first places up to its top, then halves the pieces
 * in which halving matters. Within a piece f is taken for straight.
 */
final class LogIntegral {
  /** Pieces to begin with, and the most that there will be. */
  private static final int FIRST_PIECES = 8;

  private static final int MOST_PIECES = 96;

  /** A top is found when f falls by no more than this to the places beside it. */
  private static final double FLAT = 2;

  /** Of the interval; nothing narrower is followed: there f is not smooth but jumps. */
  private static final double NARROWEST = 1e-4;

  /** Share of the whole that the last halvings may still have moved, together. */
  private static final double TOLERANCE = 0.01;

  private final TreeMap<Double, Double> heights = new TreeMap<>();
  private final DoubleUnaryOperator logarithm;

  private LogIntegral(DoubleUnaryOperator logarithm) {
    this.logarithm = logarithm;
  }

  /** Integrates from low to high. */
  static LogIntegral of(DoubleUnaryOperator logarithm, double low, double high) {
    LogIntegral integral = new LogIntegral(logarithm);
    integral.refine(low, high);
    return integral;
  }

  /** A piece, its logarithm of the integral, and how much halving its parent moved that. */
  private record Piece(double low, double high, double logMass, double logMoved) {}

  private void refine(double low, double high) {
    for (int i = 0; i <= FIRST_PIECES; i++) {
      evaluate(low + (high - low) * i / FIRST_PIECES);
    }
    climb();
    PriorityQueue<Piece> pieces =
        new PriorityQueue<>(Comparator.comparingDouble(Piece::logMoved).reversed());
    List<Double> places = List.copyOf(heights.keySet());
    for (int i = 1; i < places.size(); i++) {
      double mass = logMass(places.get(i - 1), places.get(i));
      pieces.add(new Piece(places.get(i - 1), places.get(i), mass, mass));
    }
    while (pieces.size() < MOST_PIECES && !settled(pieces)) {
      halve(pieces.remove(), pieces);
    }
  }

  private void climb() {
    OptionalDouble next = besideATop();
    while (next.isPresent() && heights.size() < MOST_PIECES) {
      evaluate(next.getAsDouble());
      next = besideATop();
    }
  }

  /** The middle between a place higher than its neighbours and one of those far below it. */
  private OptionalDouble besideATop() {
    for (double place : heights.keySet()) {
      double left = Objects.requireNonNullElse(heights.lowerKey(place), place);
      double right = Objects.requireNonNullElse(heights.higherKey(place), place);
      double here = height(place);
      if (here >= height(left) && here >= height(right)) {
        double lower = height(left) < height(right) ? left : right;
        boolean wide =
            Math.abs(place - lower) > NARROWEST * (heights.lastKey() - heights.firstKey());
        if (wide && here - height(lower) > FLAT) {
          return OptionalDouble.of((place + lower) / 2);
        }
      }
    }
    return OptionalDouble.empty();
  }

  private static boolean settled(PriorityQueue<Piece> pieces) {
    double moved = logSum(pieces.stream().map(Piece::logMoved).toList());
    double whole = logSum(pieces.stream().map(Piece::logMass).toList());
    return moved < whole + Math.log(TOLERANCE);
  }

  private void halve(Piece piece, PriorityQueue<Piece> pieces) {
    double middle = (piece.low() + piece.high()) / 2;
    evaluate(middle);
    double left = logMass(piece.low(), middle);
    double right = logMass(middle, piece.high());
    double both = logSum(List.of(left, right));
    // Each half is taken to be as wrong as both together were: cautious by a factor of eight.
    double moved = logDifference(both, piece.logMass());
    pieces.add(new Piece(piece.low(), middle, left, moved));
    pieces.add(new Piece(middle, piece.high(), right, moved));
  }

  private void evaluate(double place) {
    heights.put(place, logarithm.applyAsDouble(place));
  }

  /** The logarithm of the integral between two neighbouring places, f straight between them. */
  private double logMass(double low, double high) {
    double first = height(low);
    double second = height(high);
    double top = Math.max(first, second);
    double fall = Math.abs(first - second);
    // (1 - exp(-fall)) / fall, without its 0/0
    double mean = fall > 0 ? -Math.expm1(-fall) / fall : 1;
    return top + Math.log(mean * (high - low));
  }

  private double height(double place) {
    return heights.getOrDefault(place, Double.NEGATIVE_INFINITY);
  }

  /** The logarithm of the integral. */
  double logTotal() {
    return logSum(logMasses());
  }

  private List<Double> logMasses() {
    List<Double> places = List.copyOf(heights.keySet());
    List<Double> masses = new ArrayList<>();
    for (int i = 1; i < places.size(); i++) {
      masses.add(logMass(places.get(i - 1), places.get(i)));
    }
    return masses;
  }

  /** Below which place a share of the integral lies; linear within a piece. */
  double quantile(double share) {
    List<Double> places = List.copyOf(heights.keySet());
    List<Double> masses = logMasses();
    double total = logSum(masses);
    double below = 0;
    for (int i = 0; i < masses.size(); i++) {
      double mass = Math.exp(masses.get(i) - total);
      if (below + mass >= share) {
        double part = mass > 0 ? (share - below) / mass : 0;
        return places.get(i) + part * (places.get(i + 1) - places.get(i));
      }
      below += mass;
    }
    return heights.lastKey();
  }

  /** The logarithm of a sum of exponentials. */
  static double logSum(List<Double> logarithms) {
    double top =
        logarithms.stream().mapToDouble(each -> each).max().orElse(Double.NEGATIVE_INFINITY);
    if (Double.isInfinite(top)) {
      return top;
    }
    return top + Math.log(logarithms.stream().mapToDouble(each -> Math.exp(each - top)).sum());
  }

  private static double logDifference(double first, double second) {
    double top = Math.max(first, second);
    double fall = Math.abs(first - second);
    return fall > 0 ? top + Math.log(-Math.expm1(-fall)) : Double.NEGATIVE_INFINITY;
  }
}
