package ohmtrail.cli.chart.canvas;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Writes SVG 1.1: words stay words that can be searched, selected and read aloud, with the viewer's
 * own sans serif. It refers to nothing outside itself and holds no script, so that it can stand in
 * a page as it is.
 */
public final class SvgCanvas implements Canvas {
  private static final String FONTS = "Helvetica, Arial, 'DejaVu Sans', sans-serif";

  /** Digits after the point of a coordinate: a tenth of a point is finer than any screen. */
  private static final int DECIMALS = 1;

  /** What stands for a character that XML cannot hold. */
  private static final int REPLACEMENT = 0xFFFD;

  private final StringBuilder body = new StringBuilder();
  private final double width;
  private final double height;

  /**
   * An empty white sheet.
   *
   * @param width points
   * @param height points
   */
  public SvgCanvas(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /**
   * The sheet as an {@code svg} element.
   *
   * @param title what it shows
   * @param description the same in words, for those who do not see it
   */
  public String element(String title, String description) {
    String id = "c" + Integer.toHexString((title + description + body).hashCode());
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" width=\""
        + number(width)
        + "\" height=\""
        + number(height)
        + "\" viewBox=\"0 0 "
        + number(width)
        + " "
        + number(height)
        + "\" font-family=\""
        + FONTS
        + "\" aria-labelledby=\""
        + (id + "t " + id + "d")
        + "\">\n<title id=\""
        + (id + "t\">" + escape(title))
        + "</title>\n<desc id=\""
        + (id + "d\">" + escape(description))
        + "</desc>\n<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n"
        + body
        + "</svg>\n";
  }

  @Override
  public void line(List<Spot> spots, Pen pen) {
    body.append("<polyline points=\"").append(points(spots)).append("\" fill=\"none\"");
    stroke(pen);
    body.append("/>\n");
  }

  @Override
  public void shape(List<Spot> corners, Ink fill, Pen outline) {
    body.append("<polygon points=\"").append(points(corners)).append("\"");
    fill(fill);
    stroke(outline);
    body.append("/>\n");
  }

  @Override
  public void circle(Spot centre, double radius, Ink fill, Pen outline) {
    body.append("<circle");
    attribute("cx", centre.x());
    attribute("cy", centre.y());
    attribute("r", radius);
    fill(fill);
    stroke(outline);
    body.append("/>\n");
  }

  @Override
  public void rectangle(Spot upperLeft, double width, double height, Ink fill) {
    body.append("<rect");
    attribute("x", upperLeft.x());
    attribute("y", upperLeft.y());
    attribute("width", width);
    attribute("height", height);
    fill(fill);
    body.append("/>\n");
  }

  @Override
  public void text(String words, Spot at, Lettering lettering) {
    body.append("<text");
    attribute("x", at.x());
    attribute("y", at.y());
    attribute("font-size", lettering.size());
    fill(lettering.ink());
    if (lettering.weight() == Lettering.Weight.BOLD) {
      body.append(" font-weight=\"bold\"");
    }
    if (lettering.anchor() != Lettering.Anchor.START) {
      String anchor = lettering.anchor() == Lettering.Anchor.MIDDLE ? "middle" : "end";
      body.append(" text-anchor=\"").append(anchor).append("\"");
    }
    if (lettering.degrees() != 0) {
      body.append(" transform=\"rotate(")
          .append(number(lettering.degrees()) + " " + number(at.x()) + " " + number(at.y()))
          .append(")\"");
    }
    body.append(">").append(escape(words)).append("</text>\n");
  }

  @Override
  public void withTip(String words, Runnable drawing) {
    body.append("<g><title>").append(escape(words)).append("</title>\n");
    drawing.run();
    body.append("</g>\n");
  }

  private void fill(Ink ink) {
    body.append(" fill=\"").append(ink.hex()).append("\"");
  }

  private void stroke(Pen pen) {
    body.append(" stroke=\"").append(pen.ink().hex()).append("\"");
    attribute("stroke-width", pen.width());
    if (!pen.dashes().isEmpty()) {
      String dashes = pen.dashes().stream().map(SvgCanvas::number).collect(Collectors.joining(" "));
      body.append(" stroke-dasharray=\"").append(dashes).append("\"");
    }
  }

  private void attribute(String name, double value) {
    body.append(" ").append(name).append("=\"").append(number(value)).append("\"");
  }

  private static String points(List<Spot> spots) {
    return spots.stream()
        .map(spot -> number(spot.x()) + "," + number(spot.y()))
        .collect(Collectors.joining(" "));
  }

  private static String number(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  private static String escape(String words) {
    StringBuilder escaped = new StringBuilder();
    words.codePoints().forEach(letter -> escaped.append(escape(letter)));
    return escaped.toString();
  }

  private static String escape(int letter) {
    return switch (letter) {
      case '&' -> "&amp;";
      case '<' -> "&lt;";
      case '>' -> "&gt;";
      default -> Character.toString(isXml(letter) ? letter : REPLACEMENT);
    };
  }

  /** Whether XML 1.0 allows the character (section 2.2 of the recommendation). */
  private static boolean isXml(int letter) {
    return letter == '\t'
        || letter == '\n'
        || letter == '\r'
        || (letter >= 0x20 && letter <= 0xD7FF)
        || (letter >= 0xE000 && letter <= 0xFFFD)
        || letter >= 0x10000;
  }
}
