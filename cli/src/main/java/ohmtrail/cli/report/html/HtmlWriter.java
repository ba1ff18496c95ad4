package ohmtrail.cli.report.html;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import ohmtrail.cli.chart.canvas.SvgCanvas;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Document;
import ohmtrail.cli.report.document.Document.Section;

/**
 * Writes a document as one HTML file: no script, nothing from outside, a content policy that allows
 * neither. Prints on A4 and Letter with page numbers; what is too wide for a phone scrolls by
 * itself.
 */
public final class HtmlWriter {
  private static final String STYLE =
      """
      body { font: 16px/1.45 "DejaVu Sans", Verdana, Helvetica, Arial, sans-serif; color: #111;
        background: #fff; margin: 0 auto; max-width: 62rem; padding: 0 1rem 3rem;
        overflow-wrap: break-word; }
      h1 { font-size: 1.7rem; line-height: 1.2; margin: 1.5rem 0 0.3rem; }
      h2 { font-size: 1.3rem; margin: 2.2rem 0 0.6rem; border-bottom: 2px solid #111; }
      h3 { font-size: 1.05rem; margin: 1.4rem 0 0.4rem; }
      p { margin: 0.5rem 0; max-width: 46rem; }
      ul { margin: 0.5rem 0; padding-left: 1.3rem; max-width: 46rem; }
      .lead { font-size: 1.15rem; font-weight: bold; }
      .caution { border-left: 6px solid #b00; padding: 0.3rem 0 0.3rem 0.7rem; font-weight: bold; }
      .note { color: #444; font-size: 0.9rem; }
      nav a { color: #00458a; }
      .wide { overflow-x: auto; margin: 0.6rem 0; }
      .wide:focus-visible { outline: 3px solid #00458a; }
      table { border-collapse: collapse; font-size: 0.85rem; }
      caption { text-align: left; font-weight: bold; padding: 0.2rem 0; }
      th, td { border-bottom: 1px solid #999; padding: 0.2rem 0.5rem; text-align: left;
        vertical-align: top; overflow-wrap: break-word; max-width: 20rem; }
      thead th { border-bottom: 2px solid #111; }
      .n { text-align: right; font-variant-numeric: tabular-nums; }
      figure { margin: 0.8rem 0; }
      figure svg { min-width: 40rem; max-width: 100%; height: auto; }
      figure img { max-width: 100%; max-height: 40rem; height: auto; }
      figcaption { font-size: 0.9rem; color: #444; }
      footer { border-top: 1px solid #999; margin-top: 2rem; font-size: 0.85rem; color: #444; }
      @page { margin: 17mm 15mm; @bottom-right { content: counter(page) " / " counter(pages); } }
      @media print {
        body { font-size: 10pt; max-width: none; padding: 0; }
        nav { display: none; }
        .page { break-before: page; }
        h2, h3, caption, thead { break-after: avoid; }
        tr, figure, .caution { break-inside: avoid; }
        .wide { overflow: visible; }
        table { width: 100%; font-size: 7.5pt; }
        figure svg { min-width: 0; width: 100%; }
        figure img { max-height: 120mm; }
      }
      """;

  private final StringBuilder out = new StringBuilder();

  private HtmlWriter() {}

  /** Writes it. */
  public static String write(Document document) {
    return new HtmlWriter().whole(document);
  }

  private String whole(Document document) {
    out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    out.append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ");
    out.append("style-src 'sha256-" + sha256(STYLE) + "'; img-src data:; base-uri 'none'; ");
    out.append("form-action 'none'\">\n");
    out.append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    out.append("<title>" + text(document.title()) + "</title>\n");
    out.append("<style>" + STYLE + "</style>\n</head>\n<body>\n<header>\n");
    out.append("<h1>" + text(document.title()) + "</h1>\n");
    out.append("<p>" + text(document.subject()) + "</p>\n</header>\n");
    contents(document.sections());
    out.append("<main>\n");
    document.sections().forEach(this::section);
    out.append("</main>\n<footer><p>" + text(document.footer()) + "</p></footer>\n");
    return out.append("</body>\n</html>\n").toString();
  }

  private void contents(List<Section> sections) {
    if (sections.size() < 2) {
      return;
    }
    out.append("<nav aria-label=\"Contents\">\n<ul>\n");
    for (Section section : sections) {
      out.append("<li><a href=\"#" + text(section.id()) + "\">" + text(section.heading()));
      out.append("</a></li>\n");
    }
    out.append("</ul>\n</nav>\n");
  }

  private void section(Section section) {
    out.append("<section id=\"" + text(section.id()) + "\"");
    out.append(section.startsPage() ? " class=\"page\">\n" : ">\n");
    out.append("<h2>" + text(section.heading()) + "</h2>\n");
    section.blocks().forEach(this::block);
    out.append("</section>\n");
  }

  private void block(Block block) {
    if (block instanceof Block.Paragraph paragraph) {
      String style = paragraph.weight().name().toLowerCase(Locale.ROOT);
      boolean isPlain = paragraph.weight() == Block.Weight.PLAIN;
      out.append(isPlain ? "<p>" : "<p class=\"" + style + "\">");
      out.append(text(paragraph.words()) + "</p>\n");
    } else if (block instanceof Block.Heading heading) {
      out.append("<h3>" + text(heading.words()) + "</h3>\n");
    } else if (block instanceof Block.Items items) {
      out.append("<ul>\n");
      items.entries().forEach(entry -> out.append("<li>" + text(entry) + "</li>\n"));
      out.append("</ul>\n");
    } else if (block instanceof Block.Table table) {
      table(table);
    } else if (block instanceof Block.Drawing drawing) {
      drawing(drawing);
    } else if (block instanceof Block.Photo photo) {
      photo(photo);
    }
  }

  private void table(Block.Table table) {
    out.append("<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"");
    out.append(text(table.caption()) + "\">\n<table>\n<caption>" + text(table.caption()));
    out.append("</caption>\n");
    head(table);
    out.append("<tbody>\n");
    table.rows().forEach(row -> row(table, row));
    out.append("</tbody>\n</table>\n</div>\n");
  }

  private void head(Block.Table table) {
    if (table.columns().stream().allMatch(column -> column.heading().isEmpty())) {
      return;
    }
    out.append("<thead>\n<tr>");
    for (Block.Column column : table.columns()) {
      String side = column.isNumeric() ? " class=\"n\"" : "";
      out.append(
          column.heading().isEmpty()
              ? "<td></td>"
              : "<th scope=\"col\"" + side + ">" + text(column.heading()) + "</th>");
    }
    out.append("</tr>\n</thead>\n");
  }

  private void row(Block.Table table, List<String> row) {
    if (table.isSection(row)) {
      out.append("<tr><th colspan=\"" + table.columns().size() + "\">");
      out.append(text(row.get(0)) + "</th></tr>\n");
      return;
    }
    out.append("<tr>");
    for (int c = 0; c < row.size(); c++) {
      out.append(table.columns().get(c).isNumeric() ? "<td class=\"n\">" : "<td>");
      out.append(text(row.get(c)) + "</td>");
    }
    out.append("</tr>\n");
  }

  private void drawing(Block.Drawing drawing) {
    SvgCanvas canvas = new SvgCanvas(drawing.picture().width(), drawing.picture().height());
    drawing.picture().drawOn(canvas);
    out.append("<figure>\n<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"");
    out.append(text(drawing.caption()) + "\">\n");
    out.append(canvas.element(drawing.caption(), drawing.alternative()));
    out.append("</div>\n<figcaption>" + text(drawing.caption()) + "</figcaption>\n</figure>\n");
  }

  private void photo(Block.Photo photo) {
    out.append("<figure>\n<img alt=\"" + text(photo.alternative()) + "\" width=\"");
    out.append(photo.file().width() + "\" height=\"" + photo.file().height() + "\" src=\"data:");
    out.append(photo.file().kind().mediaType() + ";base64,");
    out.append(Base64.getEncoder().encodeToString(photo.file().content()) + "\">\n<figcaption>");
    out.append(text(photo.caption()) + "</figcaption>\n</figure>\n");
  }

  /** Text that means nothing to a browser, in an element or in a quoted attribute. */
  private static String text(String words) {
    StringBuilder safe = new StringBuilder();
    words
        .codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                default -> safe.appendCodePoint(isHtml(c) ? c : 0xFFFD);
              }
            });
    return safe.toString();
  }

  /** No control, no half of a character, nothing that turns the order of what is read. */
  private static boolean isHtml(int c) {
    int type = Character.getType(c);
    return type != Character.CONTROL
        && type != Character.SURROGATE
        && type != Character.FORMAT
        && type != Character.UNASSIGNED
        && type != Character.PRIVATE_USE
        && type != Character.LINE_SEPARATOR
        && type != Character.PARAGRAPH_SEPARATOR;
  }

  private static String sha256(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java has SHA-256", e);
    }
  }
}
