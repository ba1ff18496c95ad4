package ohmtrail.cli.chart;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.UUID;
import ohmtrail.cli.chart.canvas.Picture;
import ohmtrail.cli.chart.canvas.RasterCanvas;
import ohmtrail.cli.chart.canvas.SvgCanvas;

/** Charts as files. Only PNG needs a font on the machine. */
public final class ChartFile {
  private static final String XML_DECLARATION = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  private static final String SVG = ".svg";
  private static final String PNG = ".png";

  private ChartFile() {}

  /** A stand-alone SVG file, UTF-8. */
  public static byte[] svg(Chart chart) {
    return (XML_DECLARATION + svgElement(chart)).getBytes(StandardCharsets.UTF_8);
  }

  /** The same as an element that can stand in a page. */
  public static String svgElement(Chart chart) {
    if (chart instanceof CalibrationChart calibration) {
      return new CalibrationPlot(calibration).sheet().svgElement();
    }
    Picture picture = picture(chart);
    SvgCanvas canvas = new SvgCanvas(picture.width(), picture.height());
    picture.drawOn(canvas);
    return canvas.element(chart.title(), chart.description());
  }

  /** A chart that is no calibration laid out, for a canvas of one's own. */
  public static Picture picture(Chart chart) {
    return chart instanceof MapChart map
        ? new MapDrawing(map)
        : new ProfileDrawing((ProfileChart) chart);
  }

  /** A PNG file with two pixels per point. */
  public static byte[] png(Chart chart) {
    if (chart instanceof CalibrationChart calibration) {
      return new CalibrationPlot(calibration).sheet().png();
    }
    Picture picture = picture(chart);
    RasterCanvas canvas = new RasterCanvas(picture.width(), picture.height());
    picture.drawOn(canvas);
    return canvas.png();
  }

  /**
   * Writes a chart, whole or not at all.
   *
   * @param file must end in {@code .svg} or {@code .png}, in whatever case; replaced if it is there
   * @throws IllegalArgumentException when it ends otherwise
   * @throws IOException when it cannot be written
   */
  public static void write(Chart chart, Path file) throws IOException {
    String name = file.toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(SVG)) {
      replace(file, svg(chart));
    } else if (name.endsWith(PNG)) {
      replace(file, png(chart));
    } else {
      throw new IllegalArgumentException(
          "Chart file ("
              + file
              + ") must end in .svg or .png\nMaybe add one of these: .svg for print and pages, .png"
              + " where SVG is not shown.");
    }
  }

  private static void replace(Path file, byte[] content) throws IOException {
    Path whole = file.resolveSibling("." + UUID.randomUUID() + ".part");
    try {
      Files.write(whole, content, StandardOpenOption.CREATE_NEW);
      Files.move(whole, file, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(whole);
    }
  }
}
