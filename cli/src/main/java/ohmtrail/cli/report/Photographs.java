package ohmtrail.cli.report;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.casefile.CaseFileException;
import ohmtrail.cli.casefile.Problem;
import ohmtrail.cli.casefile.circumstances.Photograph;
import ohmtrail.cli.report.document.PictureFile;

/** Opens the photographs of a case; each is one, of a bounded size, or refused with its place. */
final class Photographs {
  private static final long MOST_BYTES = 8_000_000;
  private static final long MOST_BYTES_TOGETHER = 64_000_000;
  private static final long MOST_PIXELS = 50_000_000;

  /**
   * A photograph that was opened.
   *
   * @param said what the case says of it
   * @param file the picture
   * @param sha256 of the file
   */
  record Opened(Photograph said, PictureFile file, String sha256) {}

  private Photographs() {}

  /**
   * Opens them.
   *
   * @throws CaseFileException when one is not there, is no picture or is too big
   */
  static List<Opened> of(CaseFile caseFile) throws CaseFileException {
    List<Opened> opened = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    long together = 0;
    for (Photograph photograph : caseFile.circumstances().photographs()) {
      try {
        Path beside =
            caseFile.files().stream()
                .findFirst()
                .orElseThrow(() -> new Refused("must lie beside a case file, not standard input"));
        byte[] content = content(beside.resolveSibling(photograph.file()));
        together += content.length;
        if (together > MOST_BYTES_TOGETHER) {
          throw new Refused("must have at most 64 MB together with those before it");
        }
        opened.add(new Opened(photograph, picture(content), Provenance.sha256(content)));
      } catch (Refused refused) {
        problems.add(caseFile.problemAt(photograph, String.valueOf(refused.getMessage())));
      }
    }
    if (!problems.isEmpty()) {
      throw new CaseFileException(problems);
    }
    return opened;
  }

  /** What a photograph must be and is not: the rest of a sentence. */
  private static final class Refused extends Exception {
    private static final long serialVersionUID = 1;

    Refused(String rule) {
      super(rule);
    }
  }

  private static byte[] content(Path file) throws Refused {
    try {
      if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
        throw new Refused("must be a file beside the case file; there is none of that name");
      }
      long size = Files.size(file);
      if (size > MOST_BYTES) {
        throw new Refused("must have at most 8 MB, not " + size + " bytes");
      }
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw new Refused("must be a file that can be read");
    }
  }

  private static PictureFile picture(byte[] content) throws Refused {
    PictureFile.Kind kind =
        kind(content)
            .orElseThrow(
                () -> new Refused("must hold a JPEG or PNG picture, whatever it is called"));
    try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(content))) {
      Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(kind.name());
      ImageReader reader = readers.next();
      try {
        reader.setInput(in, true, true);
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if ((long) width * height > MOST_PIXELS) {
          throw new Refused(
              "must have at most 50 million pixels, not " + width + " times " + height);
        }
        // A picture that breaks off is found out here and not in somebody's hands.
        reader.read(0);
        return new PictureFile(kind, width, height, content);
      } finally {
        reader.dispose();
      }
    } catch (IOException | RuntimeException broken) {
      throw new Refused("must hold a picture that can be read to its end");
    }
  }

  private static Optional<PictureFile.Kind> kind(byte[] content) {
    if (begins(content, 0xFF, 0xD8, 0xFF)) {
      return Optional.of(PictureFile.Kind.JPEG);
    }
    return begins(content, 0x89, 'P', 'N', 'G', 0x0D, 0x0A, 0x1A, 0x0A)
        ? Optional.of(PictureFile.Kind.PNG)
        : Optional.empty();
  }

  private static boolean begins(byte[] content, int... start) {
    if (content.length < start.length) {
      return false;
    }
    for (int i = 0; i < start.length; i++) {
      if ((content[i] & 0xFF) != start[i]) {
        return false;
      }
    }
    return true;
  }
}
