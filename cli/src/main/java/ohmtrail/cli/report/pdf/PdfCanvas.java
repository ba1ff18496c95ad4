package ohmtrail.cli.report.pdf;

import java.awt.Color;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import ohmtrail.cli.chart.canvas.Canvas;
import ohmtrail.cli.chart.canvas.Ink;
import ohmtrail.cli.chart.canvas.Lettering;
import ohmtrail.cli.chart.canvas.Pen;
import ohmtrail.cli.chart.canvas.Spot;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.util.Matrix;

/** Draws on a page, y downward from an upper edge; words stay words that can be searched. */
final class PdfCanvas implements Canvas {
  /** Share of the radius of the handles that make four Bézier curves a circle. */
  private static final double ROUND = 0.5523;

  private final PDPageContentStream stream;
  private final Face plain;
  private final Face bold;
  private final double height;

  /**
   * Draws in a stream whose unit is the point of the drawing and whose origin its lower left
   * corner.
   *
   * @param height of the drawing, points
   */
  PdfCanvas(PDPageContentStream stream, Face plain, Face bold, double height) {
    this.stream = stream;
    this.plain = plain;
    this.bold = bold;
    this.height = height;
  }

  /** Something that writes to the stream. */
  private interface Writing {
    void run() throws IOException;
  }

  private static void write(Writing writing) {
    try {
      writing.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Color colour(Ink ink) {
    return Color.decode(ink.hex());
  }

  private float y(double y) {
    return (float) (height - y);
  }

  private void path(List<Spot> spots) throws IOException {
    stream.moveTo((float) spots.get(0).x(), y(spots.get(0).y()));
    for (Spot spot : spots.subList(1, spots.size())) {
      stream.lineTo((float) spot.x(), y(spot.y()));
    }
  }

  private void stroke(Pen pen) throws IOException {
    stream.setStrokingColor(colour(pen.ink()));
    stream.setLineWidth((float) pen.width());
    float[] dashes = new float[pen.dashes().size()];
    for (int d = 0; d < dashes.length; d++) {
      dashes[d] = pen.dashes().get(d).floatValue();
    }
    stream.setLineDashPattern(dashes, 0);
  }

  @Override
  public void line(List<Spot> spots, Pen pen) {
    write(
        () -> {
          stroke(pen);
          path(spots);
          stream.stroke();
        });
  }

  @Override
  public void shape(List<Spot> corners, Ink fill, Pen outline) {
    write(
        () -> {
          stroke(outline);
          stream.setNonStrokingColor(colour(fill));
          path(corners);
          stream.closePath();
          stream.fillAndStroke();
        });
  }

  @Override
  public void circle(Spot centre, double radius, Ink fill, Pen outline) {
    write(
        () -> {
          stroke(outline);
          stream.setNonStrokingColor(colour(fill));
          float x = (float) centre.x();
          float y = y(centre.y());
          float r = (float) radius;
          float h = (float) (radius * ROUND);
          stream.moveTo(x + r, y);
          stream.curveTo(x + r, y + h, x + h, y + r, x, y + r);
          stream.curveTo(x - h, y + r, x - r, y + h, x - r, y);
          stream.curveTo(x - r, y - h, x - h, y - r, x, y - r);
          stream.curveTo(x + h, y - r, x + r, y - h, x + r, y);
          stream.closePath();
          stream.fillAndStroke();
        });
  }

  @Override
  public void rectangle(Spot upperLeft, double width, double tall, Ink fill) {
    write(
        () -> {
          stream.setNonStrokingColor(colour(fill));
          stream.addRect(
              (float) upperLeft.x(), y(upperLeft.y() + tall), (float) width, (float) tall);
          stream.fill();
        });
  }

  @Override
  public void text(String words, Spot at, Lettering lettering) {
    Face face = lettering.weight() == Lettering.Weight.BOLD ? bold : plain;
    String shown = face.shown(words);
    double wide = face.width(shown, lettering.size());
    double before =
        switch (lettering.anchor()) {
          case START -> 0;
          case MIDDLE -> wide / 2;
          case END -> wide;
        };
    write(
        () -> {
          stream.beginText();
          stream.setNonStrokingColor(colour(lettering.ink()));
          stream.setFont(face.font(), (float) lettering.size());
          Matrix place =
              Matrix.getRotateInstance(
                  Math.toRadians(-lettering.degrees()), (float) at.x(), y(at.y()));
          place.translate((float) -before, 0);
          stream.setTextMatrix(place);
          stream.showText(shown);
          stream.endText();
        });
  }

  @Override
  public void withTip(String words, Runnable drawing) {
    drawing.run();
  }
}
