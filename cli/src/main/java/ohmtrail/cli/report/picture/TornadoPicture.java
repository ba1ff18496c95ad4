package ohmtrail.cli.report.picture;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import ohmtrail.cli.chart.canvas.Axis;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Lettering.Anchor;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Picture;
import ohmtrail.cli.chart.canvas.Spot;
import ohmtrail.cli.chart.canvas.Type;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.sensitivity.AssumptionEffect;
import ohmtrail.sensitivity.Conclusion;
import ohmtrail.sensitivity.Sensitivity;

/**
 * Which ohms each assumption leads to at both ends of its range, the most telling on top, beside
 * the stated estimate and its interval. The low end of an assumption is a hollow bar, the high end
 * a full one.
 */
public final class TornadoPicture implements Picture {
  private static final double WIDTH = 620;
  private static final double LEFT = 190;
  private static final double RIGHT = 24;
  private static final double ROW = 22;
  private static final double TOP = 34;
  private static final double FOOT = 44;
  private static final double SIZE = 10.5;
  private static final int MOST_ROWS = 14;
  private static final double AIR = 0.06;

  private final Conclusion stated;
  private final List<AssumptionEffect> effects;

  private TornadoPicture(Conclusion stated, List<AssumptionEffect> effects) {
    this.stated = stated;
    this.effects = effects;
  }

  /** Of an answer; none where there are no ohms, or nothing changes them. */
  public static Optional<TornadoPicture> of(Sensitivity sensitivity) {
    List<AssumptionEffect> effects =
        sensitivity.effects().stream()
            .filter(AssumptionEffect::hasEffect)
            .filter(effect -> effect.spanOfLogOhms() > 0)
            .limit(MOST_ROWS)
            .toList();
    boolean isAny = !effects.isEmpty() && sensitivity.stated().estimate().isPresent();
    return isAny
        ? Optional.of(new TornadoPicture(sensitivity.stated(), effects))
        : Optional.empty();
  }

  @Override
  public double width() {
    return WIDTH;
  }

  @Override
  public double height() {
    return TOP + ROW * effects.size() + FOOT;
  }

  private static Stream<Double> value(OptionalDouble value) {
    return value.isPresent() ? Stream.of(value.getAsDouble()) : Stream.empty();
  }

  private Axis axis() {
    List<Double> all =
        Stream.concat(
                Stream.of(
                        stated.estimate(),
                        stated.ohms().orElseThrow().low(),
                        stated.ohms().orElseThrow().high())
                    .flatMap(TornadoPicture::value),
                effects.stream()
                    .flatMap(
                        effect ->
                            Stream.of(effect.atLow().estimate(), effect.atHigh().estimate())
                                .flatMap(TornadoPicture::value)))
            .toList();
    double low = all.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
    double high = all.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    double air = AIR * Math.max(high - low, 0.01 * high);
    return new Axis(low - air, high + air, LEFT, WIDTH - RIGHT);
  }

  @Override
  public void drawOn(Canvas canvas) {
    Axis axis = axis();
    double bottom = TOP + ROW * effects.size();
    interval(canvas, axis, bottom);
    Lettering plain = Lettering.of(SIZE, Ink.BLACK);
    for (Axis.Tick tick : axis.ticks(7)) {
      canvas.line(
          new Spot(axis.at(tick.value()), bottom),
          new Spot(axis.at(tick.value()), bottom + 4),
          Pen.solid(Ink.GREY, 1));
      canvas.text(
          tick.label(), new Spot(axis.at(tick.value()), bottom + 16), plain.at(Anchor.MIDDLE));
    }
    canvas.text(
        "estimate of the ohms; hollow: least value of the assumption, full: most",
        new Spot(LEFT, bottom + 34),
        Lettering.of(SIZE, Ink.DARK));
    for (int e = 0; e < effects.size(); e++) {
      row(canvas, axis, effects.get(e), TOP + ROW * e + ROW / 2);
    }
    double middle = axis.at(stated.estimate().orElseThrow());
    canvas.line(new Spot(middle, TOP - 6), new Spot(middle, bottom), Pen.solid(Ink.BLACK, 1.4));
  }

  private void interval(Canvas canvas, Axis axis, double bottom) {
    double from = stated.ohms().orElseThrow().low().orElse(axis.low());
    double to = stated.ohms().orElseThrow().high().orElse(axis.high());
    canvas.rectangle(
        new Spot(axis.at(from), TOP - 6), axis.at(to) - axis.at(from), bottom - TOP + 6, Ink.FAINT);
    canvas.text(
        "as stated "
            + Figures.estimatedOhms(stated.estimate().orElseThrow())
            + "; grey: its interval",
        new Spot(LEFT, 14),
        Lettering.of(SIZE, Ink.DARK));
  }

  private void row(Canvas canvas, Axis axis, AssumptionEffect effect, double y) {
    Lettering plain = Lettering.of(SIZE, Ink.BLACK);
    canvas.text(
        Type.fit(effect.range().assumption().key(), plain, LEFT - 12),
        new Spot(LEFT - 8, y + 4),
        plain.at(Anchor.END));
    double middle = axis.at(stated.estimate().orElseThrow());
    effect.atLow().estimate().ifPresent(ohms -> bar(canvas, middle, axis.at(ohms), y, Ink.WHITE));
    effect.atHigh().estimate().ifPresent(ohms -> bar(canvas, middle, axis.at(ohms), y, Ink.BLUE));
  }

  private static void bar(Canvas canvas, double from, double to, double y, Ink fill) {
    double left = Math.min(from, to);
    double right = Math.max(Math.max(from, to), left + 0.8);
    canvas.shape(
        List.of(
            new Spot(left, y - 6),
            new Spot(right, y - 6),
            new Spot(right, y + 6),
            new Spot(left, y + 6)),
        fill,
        Pen.solid(Ink.BLUE, 1.2));
  }
}
