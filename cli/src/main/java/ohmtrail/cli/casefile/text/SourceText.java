package ohmtrail.cli.casefile.text;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The text of a file, once it is known to be one. */
public final class SourceText {

  /** No case written by a person comes near; a file that does is not a case. */
  private static final long MOST_BYTES = 5_000_000;

  private static final char BYTE_ORDER_MARK = '\uFEFF';
  private static final String NO_CASE = "this is not the file that was meant.";

  private SourceText() {}

  /**
   * Reads a file of UTF-8 text, without the byte order mark that it may begin with.
   *
   * @param asked where a problem with the file as a whole is told: at its own beginning, or where
   *     another file names it
   */
  public static String read(Path file, Place asked, Problems problems) {
    Place start = Place.startOf(file.toString());
    problems.open(file);
    if (Files.notExists(file)) {
      throw problems.fatal(
          asked, "File (" + file + ") does not exist.", "its name or its folder was mistyped.");
    }
    if (!Files.isRegularFile(file)) {
      throw problems.fatal(
          asked, "File (" + file + ") must be a file that can be read.", "a file in it was meant.");
    }
    return text(bytes(file, asked, problems), asked, start, problems);
  }

  /** The same of a stream, up to its end. */
  public static String read(InputStream in, Place start, Problems problems) {
    try {
      byte[] bytes = in.readNBytes((int) MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES) {
        throw tooLong("more than " + MOST_BYTES, start, problems);
      }
      return text(bytes, start, start, problems);
    } catch (IOException failed) {
      throw problems.fatal(
          start, "Input could not be read: " + failed.getMessage(), "it was closed.");
    }
  }

  private static String text(byte[] bytes, Place asked, Place start, Problems problems) {
    String text = decode(bytes, start, problems);
    String unmarked =
        !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
    requireText(unmarked, start, problems);
    if (unmarked.isBlank()) {
      throw problems.fatal(asked, "File (" + start.file() + ") is empty.", NO_CASE);
    }
    return unmarked;
  }

  private static byte[] bytes(Path file, Place asked, Problems problems) {
    try {
      long size = Files.size(file);
      if (size > MOST_BYTES) {
        throw tooLong(String.valueOf(size), asked, problems);
      }
      return Files.readAllBytes(file);
    } catch (AccessDeniedException denied) {
      throw problems.fatal(
          asked, "File (" + file + ") may not be read.", "its permissions need changing.");
    } catch (IOException failed) {
      throw problems.fatal(
          asked, "File (" + file + ") could not be read: " + failed.getMessage(), NO_CASE);
    }
  }

  private static Problems.Stop tooLong(String size, Place asked, Problems problems) {
    return problems.fatal(
        asked,
        "File (" + size + " bytes) must be at most " + MOST_BYTES + " bytes long; it was not read.",
        NO_CASE);
  }

  private static String decode(byte[] bytes, Place start, Problems problems) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length);
    if (decoder.decode(in, out, true).isError()) {
      String before = out.flip().toString();
      throw problems.fatal(
          placeAfter(before, start),
          "File must be UTF-8 text; the byte here (0x"
              + String.format("%02X", bytes[in.position()] & 0xFF)
              + ") is not.",
          "save it again as UTF-8, or " + NO_CASE);
    }
    return out.flip().toString();
  }

  private static void requireText(String text, Place start, Problems problems) {
    int length = text.length();
    for (int i = 0; i < length; i++) {
      if (isNotText(text.charAt(i))) {
        throw problems.fatal(
            placeAfter(text.substring(0, i), start),
            "File must be text; the character here (U+"
                + String.format("%04X", (int) text.charAt(i))
                + ") is not.",
            NO_CASE);
      }
    }
  }

  /** Characters that no text file holds, other than the ends of lines and the tab. */
  private static boolean isNotText(char c) {
    boolean space = c == '\n' || c == '\r' || c == '\t';
    return (c < ' ' && !space) || c == 0x7F || c == 0xFFFE || c == 0xFFFF;
  }

  private static Place placeAfter(String text, Place start) {
    int line = 1 + (int) text.chars().filter(c -> c == '\n').count();
    int lineStart = text.lastIndexOf('\n') + 1;
    int column = 1 + text.codePointCount(lineStart, text.length());
    return new Place(start.file(), line, column);
  }
}
