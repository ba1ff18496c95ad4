package ohmtrail.cli.chart.canvas;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * Draws pixels, two for each point in either direction, and needs no screen. Words are set in the
 * machine's own sans serif, so the same chart has not the same bytes on every machine.
 */
public final class RasterCanvas implements Canvas {
  static {
    if (System.getProperty("java.awt.headless") == null) {
      System.setProperty("java.awt.headless", "true");
    }
  }

  /** Pixels per point: what a sharp screen has, and about 190 per inch in print. */
  static final int PIXELS_PER_POINT = 2;

  /** Where a corner is so sharp that it would stick out, it is cut. */
  private static final float MITER_LIMIT = 4;

  private final BufferedImage image;
  private final Graphics2D graphics;

  /**
   * An empty white sheet.
   *
   * @param width points
   * @param height points
   */
  public RasterCanvas(double width, double height) {
    int wide = (int) Math.ceil(width * PIXELS_PER_POINT);
    int high = (int) Math.ceil(height * PIXELS_PER_POINT);
    image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
    graphics = image.createGraphics();
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setRenderingHint(
        RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
    graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    graphics.setRenderingHint(
        RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    graphics.scale(PIXELS_PER_POINT, PIXELS_PER_POINT);
    rectangle(new Spot(0, 0), width + 1, height + 1, Ink.WHITE);
  }

  /** The sheet as a PNG file. Nothing can be drawn on it afterwards. */
  public byte[] png() {
    graphics.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ImageOutputStream stream = new MemoryCacheImageOutputStream(bytes)) {
      if (!ImageIO.write(image, "png", stream)) {
        throw new IllegalStateException("This Java runtime must be able to write PNG");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  @Override
  public void line(List<Spot> spots, Pen pen) {
    use(pen);
    graphics.draw(path(spots));
  }

  @Override
  public void shape(List<Spot> corners, Ink fill, Pen outline) {
    Path2D path = path(corners);
    path.closePath();
    use(fill);
    graphics.fill(path);
    use(outline);
    graphics.draw(path);
  }

  @Override
  public void circle(Spot centre, double radius, Ink fill, Pen outline) {
    Ellipse2D circle =
        new Ellipse2D.Double(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius);
    use(fill);
    graphics.fill(circle);
    use(outline);
    graphics.draw(circle);
  }

  @Override
  public void rectangle(Spot upperLeft, double width, double height, Ink fill) {
    use(fill);
    graphics.fill(new Rectangle2D.Double(upperLeft.x(), upperLeft.y(), width, height));
  }

  @Override
  public void text(String words, Spot at, Lettering lettering) {
    boolean bold = lettering.weight() == Lettering.Weight.BOLD;
    Font font = new Font(Font.SANS_SERIF, bold ? Font.BOLD : Font.PLAIN, 1);
    graphics.setFont(font.deriveFont((float) lettering.size()));
    use(lettering.ink());
    double length = graphics.getFontMetrics().getStringBounds(words, graphics).getWidth();
    double back =
        switch (lettering.anchor()) {
          case START -> 0;
          case MIDDLE -> length / 2;
          case END -> length;
        };
    AffineTransform upright = graphics.getTransform();
    graphics.translate(at.x(), at.y());
    graphics.rotate(Math.toRadians(lettering.degrees()));
    graphics.drawString(words, (float) -back, 0);
    graphics.setTransform(upright);
  }

  /** Draws it: pixels have nothing to say. */
  @Override
  public void withTip(String words, Runnable drawing) {
    drawing.run();
  }

  private void use(Ink ink) {
    graphics.setColor(Color.decode(ink.hex()));
  }

  private void use(Pen pen) {
    use(pen.ink());
    float[] dashes = new float[pen.dashes().size()];
    for (int i = 0; i < dashes.length; i++) {
      dashes[i] = pen.dashes().get(i).floatValue();
    }
    graphics.setStroke(
        new BasicStroke(
            (float) pen.width(),
            BasicStroke.CAP_BUTT,
            BasicStroke.JOIN_MITER,
            MITER_LIMIT,
            dashes.length == 0 ? null : dashes,
            0));
  }

  private static Path2D path(List<Spot> spots) {
    Path2D path = new Path2D.Double();
    path.moveTo(spots.get(0).x(), spots.get(0).y());
    spots.subList(1, spots.size()).forEach(spot -> path.lineTo(spot.x(), spot.y()));
    return path;
  }
}
