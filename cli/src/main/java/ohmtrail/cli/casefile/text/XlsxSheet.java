package ohmtrail.cli.casefile.text;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import ohmtrail.cli.casefile.text.Node.Scalar;
import org.jspecify.annotations.Nullable;

/** The first sheet of an Office Open XML workbook (ECMA-376 part 1, 18.3). */
final class XlsxSheet {
  private static final String RELATIONS =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  private static final String STRICT_RELATIONS =
      "http://purl.oclc.org/ooxml/officeDocument/relationships";
  private static final int LETTERS = 26;

  private final Spreadsheet file;
  private final SheetRows rows;
  private final List<String> sharedTexts = new ArrayList<>();

  XlsxSheet(Spreadsheet file) {
    this.file = file;
    this.rows = new SheetRows(file);
  }

  List<List<Scalar>> rows() throws IOException, XMLStreamException {
    Optional<XMLStreamReader> shared = file.part("xl/sharedStrings.xml");
    if (shared.isPresent()) {
      readShared(shared.get());
    }
    readSheet(part(firstSheet()));
    return rows.all();
  }

  private XMLStreamReader part(String name) throws IOException, XMLStreamException {
    return file.part(name)
        .orElseThrow(() -> new Spreadsheet.SheetException("There is no part (" + name + ")"));
  }

  private String firstSheet() throws IOException, XMLStreamException {
    XMLStreamReader workbook = part("xl/workbook.xml");
    String relation = null;
    while (workbook.hasNext() && relation == null) {
      if (workbook.next() == XMLStreamConstants.START_ELEMENT
          && workbook.getLocalName().equals("sheet")) {
        relation = workbook.getAttributeValue(RELATIONS, "id");
        relation = relation == null ? workbook.getAttributeValue(STRICT_RELATIONS, "id") : relation;
      }
    }
    Map<String, String> targets = new HashMap<>();
    XMLStreamReader relations = part("xl/_rels/workbook.xml.rels");
    while (relations.hasNext()) {
      if (relations.next() == XMLStreamConstants.START_ELEMENT
          && relations.getLocalName().equals("Relationship")) {
        targets.put(
            relations.getAttributeValue(null, "Id"), relations.getAttributeValue(null, "Target"));
      }
    }
    String target = relation == null ? null : targets.get(relation);
    if (target == null) {
      throw new Spreadsheet.SheetException("The workbook names no sheet");
    }
    return target.startsWith("/") ? target.substring(1) : "xl/" + target;
  }

  private void readShared(XMLStreamReader xml) throws XMLStreamException {
    StringBuilder text = new StringBuilder();
    boolean phonetic = false;
    while (xml.hasNext()) {
      int event = xml.next();
      String name = isElement(event) ? xml.getLocalName() : "";
      if (event == XMLStreamConstants.START_ELEMENT && name.equals("si")) {
        text.setLength(0);
      } else if (event == XMLStreamConstants.END_ELEMENT && name.equals("si")) {
        sharedTexts.add(text.toString());
      } else if (name.equals("rPh")) {
        phonetic = event == XMLStreamConstants.START_ELEMENT;
      } else if (event == XMLStreamConstants.START_ELEMENT && name.equals("t") && !phonetic) {
        text.append(xml.getElementText());
      }
    }
  }

  private static boolean isElement(int event) {
    return event == XMLStreamConstants.START_ELEMENT || event == XMLStreamConstants.END_ELEMENT;
  }

  private void readSheet(XMLStreamReader xml) throws XMLStreamException {
    int row = 0;
    int column = 0;
    String type = "";
    StringBuilder value = new StringBuilder();
    while (xml.hasNext()) {
      int event = xml.next();
      if (event == XMLStreamConstants.START_ELEMENT) {
        switch (xml.getLocalName()) {
          case "row" -> {
            row = number(xml.getAttributeValue(null, "r"), row + 1);
            column = 0;
            rows.begin(row);
          }
          case "c" -> {
            column = column(xml.getAttributeValue(null, "r"), column + 1);
            String given = xml.getAttributeValue(null, "t");
            type = given == null ? "n" : given;
            value.setLength(0);
          }
          case "v", "t" -> value.append(xml.getElementText());
          default -> {}
        }
      } else if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals("c")) {
        rows.put(column, shown(type, value.toString()));
      }
    }
  }

  private static int number(@Nullable String text, int next) {
    if (text == null) {
      return next;
    }
    if (!text.matches("[1-9][0-9]{0,6}")) {
      throw new Spreadsheet.SheetException("(" + text + ") is no row");
    }
    return Integer.parseInt(text);
  }

  /** B of {@code B12} is 2. */
  private static int column(@Nullable String reference, int next) {
    if (reference == null) {
      return next;
    }
    int column = 0;
    for (int i = 0; i < reference.length() && Character.isLetter(reference.charAt(i)); i++) {
      column = column * LETTERS + Character.toUpperCase(reference.charAt(i)) - 'A' + 1;
    }
    if (column < next) {
      throw new Spreadsheet.SheetException("Cells must come in their order");
    }
    return column;
  }

  private String shown(String type, String value) {
    if (value.isEmpty()) {
      return "";
    }
    return switch (type) {
      case "s" -> sharedText(value);
      case "n" -> SheetRows.shown(value);
      case "e" -> "";
      default -> value;
    };
  }

  private String sharedText(String value) {
    if (!value.matches("[0-9]{1,7}") || Integer.parseInt(value) >= sharedTexts.size()) {
      throw new Spreadsheet.SheetException("(" + value + ") is no shared text");
    }
    return sharedTexts.get(Integer.parseInt(value));
  }
}
