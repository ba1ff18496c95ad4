package ohmtrail.cli.report.pdf;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import javax.imageio.ImageIO;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Document;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.cli.report.document.PictureFile;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.util.Matrix;

/**
 * Writes a document as PDF/A-2A: tagged, fonts embedded, words searchable, bookmarks, the same
 * bytes for the same document. A4; what is drawn wide has a page of its own on its side.
 */
public final class PdfWriter {
  /** The file's identifier is made of this and of what the file says of itself, not of the time. */
  private static final long FIXED_ID = 1;

  private static final double SIZE = 9.4;
  private static final double LEADING = 12.6;
  private static final double AFTER = 5;
  private static final double WIDE_DRAWING = 700;

  /** What was made to fit a page fits it despite rounding, points. */
  private static final double HAIR = 0.01;

  private static final int MOST_PIXELS = 1400;
  private static final float JPEG_QUALITY = 0.85f;
  private static final double MOST_PHOTO_HEIGHT = 340;
  private static final Color CAUTION = new Color(0xB00000);
  private static final Color GREY = new Color(0x444444);

  private final PDDocument pdf;
  private final Face plain;
  private final Face bold;
  private final Sheets sheets;
  private final PDStructureTreeRoot root = new PDStructureTreeRoot();
  private final PDDocumentOutline outline = new PDDocumentOutline();
  private PDStructureElement parent;

  private PdfWriter(PDDocument pdf) throws IOException {
    this.pdf = pdf;
    this.plain = Face.in(pdf, "DejaVuSans.ttf");
    this.bold = Face.in(pdf, "DejaVuSans-Bold.ttf");
    this.sheets = new Sheets(pdf);
    this.parent = new PDStructureElement("Document", root);
  }

  /**
   * Writes it.
   *
   * @throws IOException when a picture in it cannot be read
   */
  public static byte[] write(Document document) throws IOException {
    try (PDDocument pdf = new PDDocument()) {
      PdfWriter writer = new PdfWriter(pdf);
      writer.whole(document);
      pdf.setDocumentId(FIXED_ID);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      pdf.save(bytes, CompressParameters.DEFAULT_COMPRESSION);
      return bytes.toByteArray();
    }
  }

  private void whole(Document document) throws IOException {
    pdf.getDocumentCatalog().setStructureTreeRoot(root);
    pdf.getDocumentCatalog().setDocumentOutline(outline);
    pdf.setVersion(1.7f);
    root.appendKid(parent);
    paragraph(document.title(), "H1", bold, 17, 21, Color.BLACK, 0);
    paragraph(document.subject(), "P", plain, SIZE, LEADING, GREY, 0);
    PDStructureElement whole = parent;
    for (Section section : document.sections()) {
      parent = child(whole, "Sect");
      section(section);
    }
    footers(document.footer());
    sheets.close(root);
    Metadata.write(document, pdf);
  }

  private static PDStructureElement child(PDStructureNode parent, String type) {
    PDStructureElement element = new PDStructureElement(type, parent);
    parent.appendKid(element);
    return element;
  }

  private void section(Section section) throws IOException {
    boolean isTooFull = sheets.room() < 120;
    boolean isWide = section.blocks().stream().limit(1).anyMatch(PdfWriter::isWide);
    if ((section.startsPage() && !sheets.isBlank()) || isTooFull || isSideways() || isWide) {
      sheets.next(isWide);
    }
    PDOutlineItem item = new PDOutlineItem();
    item.setTitle(plain.shown(section.heading()));
    PDPageXYZDestination destination = new PDPageXYZDestination();
    destination.setPage(sheets.page());
    destination.setTop((int) sheets.below());
    item.setDestination(destination);
    outline.addLast(item);
    sheets.take(6);
    paragraph(section.heading(), "H2", bold, 13, 17, Color.BLACK, 0);
    for (Block block : section.blocks()) {
      block(block);
    }
  }

  private static boolean isWide(Block block) {
    return block instanceof Block.Drawing drawing && drawing.picture().width() > WIDE_DRAWING;
  }

  private boolean isSideways() {
    return sheets.page().getMediaBox().getWidth() > sheets.page().getMediaBox().getHeight();
  }

  private void block(Block block) throws IOException {
    if (block instanceof Block.Drawing drawing) {
      drawing(drawing);
      return;
    }
    if (isSideways()) {
      sheets.next(false);
    }
    if (block instanceof Block.Paragraph paragraph) {
      paragraph(paragraph);
    } else if (block instanceof Block.Heading heading) {
      if (sheets.room() < 70) {
        sheets.next(false);
      }
      sheets.take(5);
      paragraph(heading.words(), "H3", bold, 10.4, 14, Color.BLACK, 0);
    } else if (block instanceof Block.Items items) {
      items(items);
    } else if (block instanceof Block.Table table) {
      table(table);
    } else if (block instanceof Block.Photo photo) {
      photo(photo);
    }
  }

  private void paragraph(Block.Paragraph paragraph) throws IOException {
    switch (paragraph.weight()) {
      case PLAIN -> paragraph(paragraph.words(), "P", plain, SIZE, LEADING, Color.BLACK, 0);
      case LEAD -> paragraph(paragraph.words(), "P", bold, 11, 14.6, Color.BLACK, 0);
      case CAUTION -> paragraph(paragraph.words(), "P", bold, SIZE, LEADING, CAUTION, 0);
      case NOTE -> paragraph(paragraph.words(), "P", plain, 8, 10.6, GREY, 0);
    }
  }

  private void paragraph(
      String words, String tag, Face face, double size, double leading, Color ink, double indent)
      throws IOException {
    lines(child(parent, tag), words, face, size, leading, ink, indent);
    sheets.take(AFTER);
  }

  /** Lines of one element, over as many pages as they take. */
  private void lines(
      PDStructureElement element,
      String words,
      Face face,
      double size,
      double leading,
      Color ink,
      double indent)
      throws IOException {
    List<String> lines = face.lines(words, size, sheets.width() - indent);
    int next = 0;
    while (next < lines.size()) {
      if (sheets.room() < leading) {
        sheets.next(false);
      }
      int fit = (int) Math.min(lines.size() - next, sheets.room() / leading);
      sheets.begin(element);
      for (String line : lines.subList(next, next + fit)) {
        show(line, face, size, ink, Sheets.MARGIN + indent, sheets.below() - size);
        sheets.take(leading);
      }
      sheets.end();
      next += fit;
    }
  }

  private void show(String line, Face face, double size, Color ink, double x, double y)
      throws IOException {
    PDPageContentStream stream = sheets.stream();
    stream.beginText();
    stream.setNonStrokingColor(ink);
    stream.setFont(face.font(), (float) size);
    stream.newLineAtOffset((float) x, (float) y);
    // A space behind each line, so that who copies the words has them apart.
    stream.showText(line + " ");
    stream.endText();
  }

  private void items(Block.Items items) throws IOException {
    PDStructureElement list = child(parent, "L");
    for (String entry : items.entries()) {
      PDStructureElement item = child(list, "LI");
      if (sheets.room() < LEADING) {
        sheets.next(false);
      }
      sheets.begin(child(item, "Lbl"));
      show("\u2022", plain, SIZE, Color.BLACK, Sheets.MARGIN + 4, sheets.below() - SIZE);
      sheets.end();
      lines(child(item, "LBody"), entry, plain, SIZE, LEADING, Color.BLACK, 16);
      sheets.take(2);
    }
    sheets.take(AFTER - 2);
  }

  private void table(Block.Table table) throws IOException {
    PdfTable layout = new PdfTable(table, plain, bold, sheets.width());
    if (sheets.room() < 70) {
      sheets.next(false);
    }
    PDStructureElement element = child(parent, "Table");
    lines(child(element, "Caption"), table.caption(), bold, 8.6, 12, Color.BLACK, 0);
    boolean isHeaded = table.columns().stream().anyMatch(column -> !column.heading().isEmpty());
    if (isHeaded) {
      row(element, layout, layout.headings(), true);
      rule(0.9f);
    }
    for (List<String> row : table.rows()) {
      if (table.isSection(row)) {
        section(element, row.get(0), table.columns().size());
      } else {
        row(element, layout, row, false);
      }
      rule(0.3f);
    }
    sheets.take(AFTER + 3);
  }

  private void section(PDStructureElement table, String words, int columns) throws IOException {
    PDStructureElement cell = child(child(table, "TR"), "TH");
    attributes(cell, columns, true);
    if (sheets.room() < 3 * PdfTable.LEADING) {
      sheets.next(false);
    }
    sheets.take(2);
    lines(cell, words, bold, PdfTable.SIZE, PdfTable.LEADING, Color.BLACK, 0);
  }

  /** A row as tall as its tallest cell; one taller than a page goes on on the next. */
  private void row(PDStructureElement table, PdfTable layout, List<String> cells, boolean isHead)
      throws IOException {
    List<List<String>> lines = layout.lines(cells, isHead);
    int most = lines.stream().mapToInt(List::size).max().orElse(1);
    double tall = most * PdfTable.LEADING + 3;
    if (sheets.room() < Math.min(tall, 400)) {
      sheets.next(false);
    }
    PDStructureElement row = child(table, "TR");
    List<PDStructureElement> elements =
        cells.stream().map(cell -> child(row, isHead ? "TH" : "TD")).toList();
    if (isHead) {
      elements.forEach(cell -> attributes(cell, 1, false));
    }
    int from = 0;
    while (from < most) {
      if (sheets.room() < PdfTable.LEADING + 3) {
        sheets.next(false);
      }
      int fit = (int) Math.max(1, Math.min(most - from, (sheets.room() - 3) / PdfTable.LEADING));
      double x = Sheets.MARGIN;
      for (int c = 0; c < cells.size(); c++) {
        cell(elements.get(c), layout, c, part(lines.get(c), from, fit), x, isHead ? bold : plain);
        x += layout.width(c) + PdfTable.GAP;
      }
      sheets.take(fit * PdfTable.LEADING + 2);
      from += fit;
    }
  }

  private static List<String> part(List<String> lines, int from, int count) {
    return lines.subList(Math.min(from, lines.size()), Math.min(from + count, lines.size()));
  }

  private void cell(
      PDStructureElement element,
      PdfTable layout,
      int column,
      List<String> lines,
      double x,
      Face face)
      throws IOException {
    if (lines.stream().allMatch(String::isEmpty)) {
      return;
    }
    sheets.begin(element);
    double y = sheets.below() - PdfTable.SIZE;
    for (String line : lines) {
      double right = layout.width(column) - face.width(line, PdfTable.SIZE);
      double left = layout.isNumeric(column) ? x + right : x;
      show(line, face, PdfTable.SIZE, Color.BLACK, left, y);
      y -= PdfTable.LEADING;
    }
    sheets.end();
  }

  private static void attributes(PDStructureElement cell, int columns, boolean isOverRows) {
    COSDictionary attributes = new COSDictionary();
    attributes.setName(COSName.O, "Table");
    attributes.setName("Scope", isOverRows ? "Row" : "Column");
    if (columns > 1) {
      attributes.setInt("ColSpan", columns);
    }
    cell.getCOSObject().setItem(COSName.A, attributes);
  }

  private void rule(float width) throws IOException {
    sheets.beginArtifact();
    PDPageContentStream stream = sheets.stream();
    stream.setStrokingColor(new Color(0x999999));
    stream.setLineWidth(width);
    stream.moveTo((float) Sheets.MARGIN, (float) sheets.below());
    stream.lineTo((float) (Sheets.MARGIN + sheets.width()), (float) sheets.below());
    stream.stroke();
    sheets.end();
    sheets.take(1.5);
  }

  private void drawing(Block.Drawing drawing) throws IOException {
    boolean isWide = isWide(drawing);
    if (isWide != isSideways()) {
      sheets.next(isWide);
    }
    double caption = 26;
    double height = sheets.page().getMediaBox().getHeight() - 2 * Sheets.MARGIN;
    // What shares its page with the heading of its section makes room for it.
    double most = (isWide && sheets.room() > height / 2 ? sheets.room() : height) - caption;
    double scale =
        Math.min(
            Math.min(sheets.width() / drawing.picture().width(), 1),
            most / drawing.picture().height());
    double tall = scale * drawing.picture().height();
    if (sheets.room() < tall + caption - HAIR) {
      sheets.next(isWide);
    }
    double x = Sheets.MARGIN;
    double y = sheets.below() - tall;
    PDStructureElement figure =
        figure(drawing.alternative(), x, y, scale * drawing.picture().width(), tall);
    sheets.begin(figure);
    PDPageContentStream stream = sheets.stream();
    stream.saveGraphicsState();
    stream.transform(new Matrix((float) scale, 0, 0, (float) scale, (float) x, (float) y));
    drawing.picture().drawOn(new PdfCanvas(stream, plain, bold, drawing.picture().height()));
    stream.restoreGraphicsState();
    sheets.end();
    sheets.take(tall + 3);
    paragraph(drawing.caption(), "P", plain, 8, 10.6, GREY, 0);
  }

  /** An element with its words and its place, as PDF/UA asks for. */
  private PDStructureElement figure(
      String alternative, double x, double y, double width, double height) {
    PDStructureElement figure = child(parent, "Figure");
    figure.setAlternateDescription(plain.shown(alternative));
    COSDictionary layout = new COSDictionary();
    layout.setName(COSName.O, "Layout");
    COSArray box =
        new PDRectangle((float) x, (float) y, (float) width, (float) height).getCOSArray();
    layout.setItem("BBox", box);
    layout.setName("Placement", "Block");
    figure.getCOSObject().setItem(COSName.A, layout);
    return figure;
  }

  private void photo(Block.Photo photo) throws IOException {
    PDImageXObject image = image(photo.file());
    double scale =
        Math.min(sheets.width() / image.getWidth(), MOST_PHOTO_HEIGHT / image.getHeight());
    double tall = scale * image.getHeight();
    double wide = scale * image.getWidth();
    if (sheets.room() < tall + 30) {
      sheets.next(false);
    }
    double y = sheets.below() - tall;
    sheets.begin(figure(photo.alternative(), Sheets.MARGIN, y, wide, tall));
    sheets.stream().drawImage(image, (float) Sheets.MARGIN, (float) y, (float) wide, (float) tall);
    sheets.end();
    sheets.take(tall + 3);
    paragraph(photo.caption(), "P", plain, 8, 10.6, GREY, 0);
  }

  /** Its pixels anew, no larger than a page needs: what else the file holds stays outside. */
  private PDImageXObject image(PictureFile file) throws IOException {
    BufferedImage read = ImageIO.read(new ByteArrayInputStream(file.content()));
    if (read == null) {
      throw new IOException("A picture that was opened before must still be one");
    }
    double scale = Math.min(1, (double) MOST_PIXELS / Math.max(read.getWidth(), read.getHeight()));
    int width = Math.max(1, (int) (scale * read.getWidth()));
    int height = Math.max(1, (int) (scale * read.getHeight()));
    BufferedImage flat = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = flat.createGraphics();
    graphics.setColor(Color.WHITE);
    graphics.fillRect(0, 0, width, height);
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    graphics.drawImage(read, 0, 0, width, height, null);
    graphics.dispose();
    return file.kind() == PictureFile.Kind.JPEG
        ? JPEGFactory.createFromImage(pdf, flat, JPEG_QUALITY)
        : LosslessFactory.createFromImage(pdf, flat);
  }

  /** On every page, once it is known how many there are. */
  private void footers(String words) throws IOException {
    int pages = pdf.getNumberOfPages();
    sheets.stream().close();
    for (int p = 0; p < pages; p++) {
      try (PDPageContentStream stream =
          new PDPageContentStream(
              pdf, pdf.getPage(p), PDPageContentStream.AppendMode.APPEND, true, true)) {
        String number = (p + 1) + " / " + pages;
        double right =
            pdf.getPage(p).getMediaBox().getWidth() - Sheets.MARGIN - plain.width(number, 7.5);
        stream.beginMarkedContent(COSName.ARTIFACT);
        foot(stream, plain.lines(words, 7.5, right - Sheets.MARGIN - 20).get(0), Sheets.MARGIN);
        foot(stream, number, right);
        stream.endMarkedContent();
      }
    }
  }

  private void foot(PDPageContentStream stream, String words, double x) throws IOException {
    stream.beginText();
    stream.setNonStrokingColor(GREY);
    stream.setFont(plain.font(), 7.5f);
    stream.newLineAtOffset((float) x, (float) (Sheets.MARGIN / 2));
    stream.showText(words);
    stream.endText();
  }
}
