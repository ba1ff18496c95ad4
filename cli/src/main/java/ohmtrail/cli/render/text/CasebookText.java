package ohmtrail.cli.render.text;

import java.util.List;
import java.util.Locale;
import ohmtrail.cli.render.words.Figures;
import ohmtrail.report.casebook.Casebook;
import ohmtrail.report.casebook.FailureRates;

/** A casebook in words, and as a block of assumptions. */
public final class CasebookText {
  private static final double PER_CENT = 100;
  private static final double MINUTES_PER_HOUR = 60;

  private CasebookText() {}

  /**
   * Writes it.
   *
   * @param unstated cases that do not say where the joint was found
   * @param passedOver files that are no case
   */
  public static String of(Casebook book, int unstated, int passedOver) {
    Page page = new Page();
    page.paragraph(
        book.cases()
            + " closed cases; "
            + unstated
            + " more do not say what was found, "
            + passedOver
            + " files were passed over.");
    if (book.cases() == 0) {
      return page.paragraph(
              "A case is closed when its key (found) says which box was burnt or remade.")
          .toString();
    }
    page.gap()
        .paragraph(
            String.format(
                Locale.ROOT,
                "The first box was right in %d of them, %.0f %% (%.0f to %.0f %%, 90 %% interval); one of"
                    + " the first two in %d, %.0f %%. Boxes opened until the bad one: %.2f.",
                book.firstRight(),
                PER_CENT * book.firstRight() / book.cases(),
                PER_CENT * book.low(),
                PER_CENT * book.high(),
                book.firstTwoRight(),
                PER_CENT * book.firstTwoRight() / book.cases(),
                book.meanOpenings()));
    page.paragraph(
        String.format(
            Locale.ROOT,
            "Against opening box by box from the panel on, the advised order saved %.0f minutes of opening,"
                + " %.1f hours.",
            book.minutesSaved(),
            book.minutesSaved() / MINUTES_PER_HOUR));
    page.heading(
        "How often each kind of joint fails, against a screw; each weight of today counts for "
            + Figures.upToTenths(book.rates().strength())
            + " failures seen:");
    page.gap();
    Table table =
        new Table()
            .words("kind")
            .numbers("joints")
            .numbers("failed")
            .numbers("today")
            .numbers("learned")
            .numbers("90 % interval");
    for (FailureRates.Rate rate : book.rates().rates()) {
      table.row(
          List.of(
              rate.kind().word(),
              Figures.upToTenths(rate.joints()),
              Figures.upToTenths(rate.failures()),
              Figures.hundredths(rate.assumed()),
              Figures.hundredths(rate.mean()),
              Figures.hundredths(rate.low()) + " to " + Figures.hundredths(rate.high())));
    }
    table.lines(page.width()).forEach(page::line);
    return page.toString();
  }

  /** What was learned as a block of a case file; a screw, the measure, is left out. */
  public static String assume(Casebook book) {
    StringBuilder text = new StringBuilder();
    text.append("# Learned from ")
        .append(book.cases())
        .append(" closed cases. Each weight of before counted for ");
    text.append(Figures.upToTenths(book.rates().strength())).append(" failures seen.\n");
    text.append("assume:\n");
    for (FailureRates.Rate rate : book.rates().rates()) {
      if (rate.low() < rate.high()) {
        text.append(
            String.format(
                Locale.ROOT,
                "  %s: %.3g  # %.3g to %.3g (90 %% interval); %.1f failures of %.0f joints; was %.3g%n",
                rate.kind().weight().key(),
                rate.mean(),
                rate.low(),
                rate.high(),
                rate.failures(),
                rate.joints(),
                rate.assumed()));
      }
    }
    return text.toString().replace("\r\n", "\n");
  }
}
