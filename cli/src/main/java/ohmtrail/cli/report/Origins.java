package ohmtrail.cli.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import ohmtrail.cli.render.words.Region;
import ohmtrail.cli.report.document.Block;
import ohmtrail.cli.report.document.Block.Column;
import ohmtrail.cli.report.document.Document.Section;
import ohmtrail.report.heat.PublishedHeat;

/** What the report was made from and by, and how it is made again. */
final class Origins {
  private Origins() {}

  static Section of(ReportInputs inputs) {
    Provenance provenance = inputs.provenance();
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Block.Table(
            "Made by",
            List.of(new Column("", false), new Column("", false)),
            List.of(
                List.of("program", provenance.program()),
                List.of("Java", provenance.java()),
                List.of("command", provenance.command()),
                List.of("format of its documents", "2"))));
    List<List<String>> files = new ArrayList<>();
    provenance.files().forEach(file -> files.add(List.of(file.what(), file.name(), file.sha256())));
    for (Photographs.Opened opened : inputs.photographs()) {
      files.add(List.of("photograph", opened.said().file(), opened.sha256()));
    }
    blocks.add(
        new Block.Table(
            "Files and their SHA-256",
            List.of(
                new Column("what", false), new Column("name", false), new Column("SHA-256", false)),
            files));
    blocks.add(
        Block.words(
            "The same files, program and Java make this document again, byte for byte; no date and no"
                + " place of a folder goes into it."));
    blocks.add(new Block.Heading("Sources"));
    blocks.add(new Block.Items(List.copyOf(sources(inputs))));
    return new Section("provenance", "Provenance", true, blocks);
  }

  private static Set<String> sources(ReportInputs inputs) {
    Set<String> sources = new LinkedHashSet<>();
    boolean isAwg =
        inputs.caseFile().circuit().cables().stream()
            .anyMatch(cable -> cable.conductor().size().designation().contains("AWG"));
    sources.add(
        isAwg
            ? "NEC Chapter 9 Table 8: resistance of conductors"
            : "IEC 60228: resistance of conductors");
    sources.add(Region.of(inputs.caseFile().circuit().supply()).guidance().source());
    sources.add(PublishedHeat.SOURCE + ", abstract");
    sources.add("ENFSI Guideline for Evaluative Reporting in Forensic Science (2015), from memory");
    sources.add(
        "McKay, Beckman and Conover, Technometrics 21, 239 (1979): Latin hypercube sampling");
    return sources;
  }
}
