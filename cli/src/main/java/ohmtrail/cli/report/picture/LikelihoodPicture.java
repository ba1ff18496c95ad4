package ohmtrail.cli.report.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ohmtrail.cli.chart.canvas.Axis;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Lettering.Anchor;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Picture;
import ohmtrail.cli.chart.canvas.Spot;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.locate.OhmsInterval;
import ohmtrail.report.OhmsLikelihood;

/**
 * The likelihood of the ohms of the leading joint, all else that is known only roughly integrated
 * out, relative to its peak, with the interval below it.
 */
public final class LikelihoodPicture implements Picture {
  private static final double WIDTH = 620;
  private static final double HEIGHT = 250;
  private static final double LEFT = 46;
  private static final double RIGHT = 20;
  private static final double TOP = 24;
  private static final double BOTTOM = 190;
  private static final double SIZE = 10.5;
  private static final int TICKS = 6;

  private final OhmsLikelihood likelihood;
  private final OhmsInterval interval;

  private LikelihoodPicture(OhmsLikelihood likelihood, OhmsInterval interval) {
    this.likelihood = likelihood;
    this.interval = interval;
  }

  /** Of a likelihood; none where there is no curve to draw. */
  public static Optional<LikelihoodPicture> of(OhmsLikelihood likelihood, OhmsInterval interval) {
    return likelihood.points().size() < 3
        ? Optional.empty()
        : Optional.of(new LikelihoodPicture(likelihood, interval));
  }

  @Override
  public double width() {
    return WIDTH;
  }

  @Override
  public double height() {
    return HEIGHT;
  }

  @Override
  public void drawOn(Canvas canvas) {
    List<OhmsLikelihood.Point> points = likelihood.points();
    double low = Math.log(points.get(0).ohms());
    double high = Math.log(points.get(points.size() - 1).ohms());
    Axis across = new Axis(low, high, LEFT, WIDTH - RIGHT);
    Axis up = new Axis(0, 1.05, BOTTOM, TOP);
    band(canvas, across);
    Lettering plain = Lettering.of(SIZE, Ink.BLACK);
    for (double share : new double[] {0, 0.5, 1}) {
      canvas.line(
          new Spot(LEFT, up.at(share)),
          new Spot(WIDTH - RIGHT, up.at(share)),
          Pen.solid(Ink.LIGHT, 0.8));
      canvas.text(
          Figures.number(share), new Spot(LEFT - 6, up.at(share) + 4), plain.at(Anchor.END));
    }
    for (int t = 0; t <= TICKS; t++) {
      double at = low + (high - low) * t / TICKS;
      canvas.line(
          new Spot(across.at(at), BOTTOM),
          new Spot(across.at(at), BOTTOM + 4),
          Pen.solid(Ink.GREY, 1));
      canvas.text(
          Figures.ohms(Math.exp(at)),
          new Spot(across.at(at), BOTTOM + 17),
          plain.at(Anchor.MIDDLE));
    }
    List<Spot> curve = new ArrayList<>();
    points.forEach(
        point -> curve.add(new Spot(across.at(Math.log(point.ohms())), up.at(point.relative()))));
    canvas.line(curve, Pen.solid(Ink.BLUE, 2));
    canvas.text(
        "likelihood, relative to its peak", new Spot(LEFT, 13), Lettering.of(SIZE, Ink.DARK));
    canvas.text(
        "ohms added to the joint, in the logarithm; grey: the interval of "
            + Figures.wholeShare(interval.coverage()),
        new Spot(LEFT, BOTTOM + 40),
        Lettering.of(SIZE, Ink.DARK));
  }

  private void band(Canvas canvas, Axis across) {
    double from =
        across.at(clipped(across, Math.log(interval.low().orElse(Math.exp(across.low())))));
    double to =
        across.at(clipped(across, Math.log(interval.high().orElse(Math.exp(across.high())))));
    if (to > from) {
      canvas.rectangle(new Spot(from, TOP), to - from, BOTTOM - TOP, Ink.FAINT);
    }
    interval
        .estimate()
        .ifPresent(
            ohms -> {
              double x = across.at(clipped(across, Math.log(ohms)));
              canvas.line(
                  new Spot(x, TOP), new Spot(x, BOTTOM), Pen.dashed(Ink.BLACK, 1.2, 4.0, 3.0));
            });
  }

  private static double clipped(Axis across, double value) {
    return Math.max(across.low(), Math.min(across.high(), value));
  }
}
