package ohmtrail.cli.render.words;

import ohmtrail.circuit.Joint;
import ohmtrail.survey.Measurand;
import ohmtrail.survey.ProbePoint;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Tap;

/** Readings in the words of a region: where they were taken, and their figures. */
public final class ReadingWords {
  private final Region region;

  /** For a region. */
  public ReadingWords(Region region) {
    this.region = region;
  }

  /** What a meter was held to or closed around, beside its box in a table. */
  public String tap(Tap tap) {
    if (tap instanceof Tap.Pair pair) {
      return region.between(pair.between());
    }
    if (tap instanceof Tap.Points points) {
      return point(points.first(), points.box()) + " to " + point(points.second(), points.box());
    }
    if (tap instanceof Tap.AroundConductor around) {
      return region.conductor(around.conductor()) + " to " + around.to();
    }
    if (tap instanceof Tap.AroundLoad around) {
      return around.load();
    }
    return "across " + joint(((Tap.AcrossJoint) tap).joint(), tap.box());
  }

  private String point(ProbePoint point, String box) {
    if (point instanceof ProbePoint.JointSide side) {
      return side.side().word() + " " + joint(side.joint(), box);
    }
    String conductor = region.conductor(point.conductor());
    return point.box().equals(box) ? conductor : point.box() + " " + conductor;
  }

  /** A joint without the box that it is in, where that is known. */
  private static String joint(Joint joint, String box) {
    return joint.box().equals(box) ? joint.id().substring(box.length() + 1) : joint.id();
  }

  /** Tap and box in a sentence: {@code hot-neutral at hall-1}. */
  public String where(Reading reading) {
    return tap(reading.tap()) + " at " + reading.box();
  }

  /** Box and tap: {@code hall-1 hot-neutral}. */
  public String name(Reading reading) {
    return reading.box() + " " + tap(reading.tap());
  }

  /** What was read, in a cell of a table whose unit is the volt. */
  public static String cell(Reading reading) {
    return reading.isDead() ? "dead" : cell(reading.measurand(), reading.value());
  }

  /** A figure in a cell of a table whose unit is the volt; others carry theirs. */
  public static String cell(Measurand measurand, double value) {
    return measurand == Measurand.VOLTAGE ? Figures.tenths(value) : figure(measurand, value);
  }

  /** A difference of two figures, with its sign. */
  public static String difference(Measurand measurand, double value) {
    if (measurand == Measurand.VOLTAGE) {
      return Figures.signedTenths(value);
    }
    String size = figure(measurand, Math.abs(value));
    return (value < 0 ? "-" : "+") + size;
  }

  /** What was read, with its unit. */
  public static String figure(Reading reading) {
    return reading.isDead() ? "dead" : figure(reading.measurand(), reading.value());
  }

  /** A figure with its unit. */
  public static String figure(Measurand measurand, double value) {
    return switch (measurand) {
      case VOLTAGE -> Figures.volts(value);
      case CURRENT -> Figures.amperes(value);
      case LOOP_IMPEDANCE, RESISTANCE -> Figures.ohmsRead(value);
    };
  }
}
