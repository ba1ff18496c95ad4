package ohmtrail.cli.casefile.text;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import ohmtrail.cli.casefile.text.Node.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * The first sheet of a spreadsheet file as a table: {@code .xlsx} (ECMA-376, Office Open XML) or
 * {@code .ods} (OpenDocument 1.2, ISO/IEC 26300). Both are zip files of XML, read with what Java
 * brings: values alone, no formula, no style, nothing that the file points to.
 *
 * <p>Known limits: a date is the number behind it in {@code .xlsx}; a rich text loses its styles.
 */
public final class Spreadsheet {
  private static final String XLSX = ".xlsx";
  private static final String ODS = ".ods";

  /** No sheet of readings comes near; a file that does, unpacked, is not one. */
  private static final int MOST_BYTES = 20_000_000;

  private static final String NO_TABLE = "this is not the file that was meant, or save it as .csv.";

  private final ZipFile zip;
  private final String file;
  private final Problems problems;

  private Spreadsheet(ZipFile zip, String file, Problems problems) {
    this.zip = zip;
    this.file = file;
    this.problems = problems;
  }

  /** Whether a file of that name is one. */
  public static boolean isOne(Path file) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    return name.endsWith(XLSX) || name.endsWith(ODS);
  }

  /**
   * Reads one.
   *
   * @param file ends in .xlsx or .ods
   * @param asked where another file names it
   * @return its cells; the place of each is its row and its column
   */
  public static CsvTable read(Path file, Place asked, Problems problems) {
    problems.open(file);
    if (!Files.isRegularFile(file)) {
      throw problems.fatal(
          asked,
          "File (" + file + ") does not exist or is no file.",
          "its name or its folder was mistyped.");
    }
    try (ZipFile zip = new ZipFile(file.toFile())) {
      Spreadsheet sheet = new Spreadsheet(zip, file.toString(), problems);
      boolean xlsx = file.toString().toLowerCase(Locale.ROOT).endsWith(XLSX);
      List<List<Scalar>> rows = xlsx ? new XlsxSheet(sheet).rows() : new OdsSheet(sheet).rows();
      // Numbers stand in the file with a point, whatever they look like on the screen.
      return new CsvTable(rows, ',');
    } catch (ZipException | XMLStreamException | SheetException broken) {
      throw problems.fatal(
          asked, "File (" + file + ") is no spreadsheet that can be read.", NO_TABLE);
    } catch (IOException failed) {
      throw problems.fatal(
          asked, "File (" + file + ") could not be read: " + failed.getMessage(), NO_TABLE);
    }
  }

  /** What is not as the standards say. */
  static final class SheetException extends RuntimeException {
    private static final long serialVersionUID = 1;

    SheetException(String message) {
      super(message);
    }
  }

  /** A part of the file as XML; empty where there is none of that name. */
  Optional<XMLStreamReader> part(String name) throws IOException, XMLStreamException {
    ZipEntry entry = entry(name);
    if (entry == null) {
      return Optional.empty();
    }
    try (InputStream packed = zip.getInputStream(entry)) {
      byte[] bytes = packed.readNBytes(MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES) {
        throw new SheetException("Part (" + name + ") is too long");
      }
      return Optional.of(parser().createXMLStreamReader(new ByteArrayInputStream(bytes)));
    }
  }

  private @Nullable ZipEntry entry(String name) {
    Enumeration<? extends ZipEntry> entries = zip.entries();
    while (entries.hasMoreElements()) {
      ZipEntry entry = entries.nextElement();
      if (entry.getName().equals(name)) {
        return entry;
      }
    }
    return null;
  }

  /** One that follows nothing out of the file. */
  private static XMLInputFactory parser() {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    return factory;
  }

  /**
   * A cell.
   *
   * @param row from 1
   * @param column from 1
   */
  Scalar cell(String text, int row, int column) {
    Place place = new Place(file, row, column);
    Size.CHARACTERS.require(text.length(), place, problems);
    Size.READINGS.require(row - 1L, place, problems);
    String line = text.strip();
    return new Scalar(line, place, false, line.isEmpty());
  }
}
