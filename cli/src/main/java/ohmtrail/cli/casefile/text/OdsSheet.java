package ohmtrail.cli.casefile.text;

import java.io.IOException;
import java.util.List;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import ohmtrail.cli.casefile.text.Node.Scalar;
import org.jspecify.annotations.Nullable;

/** The first sheet of an OpenDocument spreadsheet (OpenDocument 1.2 part 1, 9.1). */
final class OdsSheet {
  private static final String TABLE = "urn:oasis:names:tc:opendocument:xmlns:table:1.0";
  private static final String OFFICE = "urn:oasis:names:tc:opendocument:xmlns:office:1.0";

  private final Spreadsheet file;
  private final SheetRows rows;
  private int row;
  private int column;

  OdsSheet(Spreadsheet file) {
    this.file = file;
    this.rows = new SheetRows(file);
  }

  List<List<Scalar>> rows() throws IOException, XMLStreamException {
    XMLStreamReader xml =
        file.part("content.xml")
            .orElseThrow(() -> new Spreadsheet.SheetException("There is no content"));
    int rowsAlike = 1;
    boolean within = false;
    while (xml.hasNext()) {
      int event = xml.next();
      boolean start = event == XMLStreamConstants.START_ELEMENT;
      if (start && xml.getLocalName().equals("table-row")) {
        within = true;
        row++;
        column = 0;
        rows.begin(row);
        rowsAlike = repeated(xml.getAttributeValue(TABLE, "number-rows-repeated"));
      } else if (start && within && isCell(xml.getLocalName())) {
        addCell(xml);
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        if (xml.getLocalName().equals("table-row")) {
          within = false;
          row += rowsAlike - 1;
        } else if (xml.getLocalName().equals("table")) {
          return rows.all();
        }
      }
    }
    return rows.all();
  }

  private static boolean isCell(String name) {
    return name.equals("table-cell") || name.equals("covered-table-cell");
  }

  private void addCell(XMLStreamReader xml) throws XMLStreamException {
    int alike = repeated(xml.getAttributeValue(TABLE, "number-columns-repeated"));
    String type = xml.getAttributeValue(OFFICE, "value-type");
    String value = xml.getAttributeValue(OFFICE, "value");
    boolean number = value != null && "float".equals(type);
    String text = text(xml);
    String shown = number ? SheetRows.shown(String.valueOf(value)) : text;
    if (!shown.isBlank()) {
      for (int c = 1; c <= Math.min(alike, SheetRows.MOST_COLUMNS); c++) {
        rows.put(column + c, shown);
      }
    }
    column += alike;
  }

  /** The paragraphs of a cell up to its end, one line each; notes to it are passed over. */
  private static String text(XMLStreamReader xml) throws XMLStreamException {
    StringBuilder text = new StringBuilder();
    int depth = 1;
    int note = 0;
    while (depth > 0 && xml.hasNext()) {
      int event = xml.next();
      if (event == XMLStreamConstants.START_ELEMENT) {
        depth++;
        String name = xml.getLocalName();
        if (note > 0 || name.equals("annotation")) {
          note++;
        } else if (name.equals("p") && text.length() > 0) {
          text.append('\n');
        } else if (name.equals("s")) {
          text.append(' ');
        }
      } else if (event == XMLStreamConstants.END_ELEMENT) {
        depth--;
        note = Math.max(0, note - 1);
      } else if (event == XMLStreamConstants.CHARACTERS && note == 0) {
        text.append(xml.getText());
      }
    }
    return text.toString();
  }

  private static int repeated(@Nullable String count) {
    if (count == null) {
      return 1;
    }
    if (!count.matches("[1-9][0-9]{0,6}")) {
      throw new Spreadsheet.SheetException("(" + count + ") is no count");
    }
    return Integer.parseInt(count);
  }
}
