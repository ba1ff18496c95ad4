package ohmtrail.cli.chart.plot;

import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.knowm.xchart.XYChart;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * A plot of XChart as SVG or PNG. Words become outlines, which cannot be searched in SVG: title and
 * description stand beside them.
 */
public final class PlotSheet {
  private static final int PIXELS_PER_POINT = 2;

  /** Hundredths of a point. */
  private static final int DECIMALS = 2;

  private static final String SVG_NAMESPACE = "http://www.w3.org/2000/svg";
  private static final String XML_DECLARATION = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

  static {
    if (System.getProperty("java.awt.headless") == null) {
      System.setProperty("java.awt.headless", "true");
    }
  }

  private final XYChart plot;
  private final int width;
  private final int height;
  private final String title;
  private final String description;

  /**
   * @param width in points
   * @param height in points
   */
  public PlotSheet(XYChart plot, int width, int height, String title, String description) {
    this.plot = plot;
    this.width = width;
    this.height = height;
    this.title = title;
    this.description = description;
  }

  /** A stand-alone SVG file, UTF-8. */
  public byte[] svg() {
    return (XML_DECLARATION + svgElement()).getBytes(StandardCharsets.UTF_8);
  }

  /** A PNG file. */
  public byte[] png() {
    BufferedImage image =
        new BufferedImage(
            width * PIXELS_PER_POINT, height * PIXELS_PER_POINT, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    graphics.scale(PIXELS_PER_POINT, PIXELS_PER_POINT);
    plot.paint(graphics, width, height);
    graphics.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /** An SVG element that can stand in a page. */
  public String svgElement() {
    Document document = emptyDocument();
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
    String prefix = "c" + Integer.toHexString((title + description).hashCode()) + "-";
    context.setComment(null);
    context.setPrecision(DECIMALS);
    context.setIDGenerator(new PrefixedIds(prefix));
    SVGGraphics2D graphics = new SVGGraphics2D(context, false);
    graphics.setSVGCanvasSize(new Dimension(width, height));
    plot.paint(graphics, width, height);
    StringWriter text = new StringWriter();
    try {
      Element root = graphics.getRoot();
      describe(document, root, prefix);
      graphics.stream(root, text, true, false);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    String whole = text.toString();
    return whole.substring(whole.indexOf("<svg"));
  }

  private static Document emptyDocument() {
    try {
      return DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .getDOMImplementation()
          .createDocument(SVG_NAMESPACE, "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException("This Java runtime must be able to make XML documents", e);
    }
  }

  /** Several charts may stand in one page. */
  private static final class PrefixedIds extends SVGIDGenerator {
    private final String prefix;

    PrefixedIds(String prefix) {
      this.prefix = prefix;
    }

    @Override
    public String generateID(String kind) {
      return prefix + super.generateID(kind);
    }
  }

  private void describe(Document document, Element root, String prefix) {
    root.setAttribute("role", "img");
    root.setAttribute("viewBox", "0 0 " + width + " " + height);
    root.setAttribute("aria-labelledby", prefix + "title " + prefix + "description");
    Element description = document.createElementNS(SVG_NAMESPACE, "desc");
    description.setAttribute("id", prefix + "description");
    description.setTextContent(this.description);
    root.insertBefore(description, root.getFirstChild());
    Element title = document.createElementNS(SVG_NAMESPACE, "title");
    title.setAttribute("id", prefix + "title");
    title.setTextContent(this.title);
    root.insertBefore(title, description);
  }
}
