package ohmtrail.cli.report.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;

/** The pages of a document, and which content on them belongs to which element of its structure. */
final class Sheets {
  /** Edge that stays white all round, points. */
  static final double MARGIN = 48;

  /** A4 on its side. */
  private static final PDRectangle SIDEWAYS =
      new PDRectangle(
          /* width= */ PDRectangle.A4.getHeight(), /* height= */ PDRectangle.A4.getWidth());

  private final PDDocument document;
  private final List<COSArray> elementsByPage = new ArrayList<>();
  private PDPage page = new PDPage();
  private PDPageContentStream stream;
  private double below;

  /** Opens the first page. */
  Sheets(PDDocument document) throws IOException {
    this.document = document;
    this.stream = open(PDRectangle.A4);
  }

  private PDPageContentStream open(PDRectangle size) throws IOException {
    page = new PDPage(size);
    page.setStructParents(elementsByPage.size());
    page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
    document.addPage(page);
    elementsByPage.add(new COSArray());
    below = size.getHeight() - MARGIN;
    return new PDPageContentStream(document, page);
  }

  /** Begins another page. */
  void next(boolean isWide) throws IOException {
    stream.close();
    stream = open(isWide ? SIDEWAYS : PDRectangle.A4);
  }

  /** Whether nothing stands on the page yet. */
  boolean isBlank() {
    return below >= page.getMediaBox().getHeight() - MARGIN;
  }

  PDPage page() {
    return page;
  }

  PDPageContentStream stream() {
    return stream;
  }

  /** Points between the margins. */
  double width() {
    return page.getMediaBox().getWidth() - 2 * MARGIN;
  }

  /** The upper edge of what is free, points from the lower edge of the page. */
  double below() {
    return below;
  }

  /** Points that are free above the lower margin. */
  double room() {
    return below - MARGIN;
  }

  /** Takes so many points. */
  void take(double points) {
    below -= points;
  }

  /** Begins content that belongs to an element. */
  void begin(PDStructureElement element) throws IOException {
    COSArray elements = elementsByPage.get(elementsByPage.size() - 1);
    PDMarkedContentReference reference = new PDMarkedContentReference();
    reference.setMCID(elements.size());
    reference.setPage(page);
    element.appendKid(reference);
    elements.add(element.getCOSObject());
    stream.beginMarkedContent(COSName.getPDFName(element.getStructureType()), reference.getMCID());
  }

  /** Begins content that belongs to no element: rules, page numbers. */
  void beginArtifact() throws IOException {
    stream.beginMarkedContent(COSName.ARTIFACT);
  }

  /** Ends either. */
  void end() throws IOException {
    stream.endMarkedContent();
  }

  /** Closes the last page and writes down which element has what. */
  void close(PDStructureTreeRoot root) throws IOException {
    stream.close();
    PDNumberTreeNode tree = new PDNumberTreeNode(PDParentTreeValue.class);
    Map<Integer, PDParentTreeValue> numbers = new TreeMap<>();
    for (int p = 0; p < elementsByPage.size(); p++) {
      numbers.put(p, new PDParentTreeValue(elementsByPage.get(p)));
    }
    tree.setNumbers(numbers);
    root.setParentTree(tree);
    root.setParentTreeNextKey(elementsByPage.size());
  }
}
