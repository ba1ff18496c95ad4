package ohmtrail.cli.render.json;

import java.util.List;
import ohmtrail.cli.casefile.CaseFile;
import ohmtrail.cli.render.Cautions;
import ohmtrail.cli.render.map.MapWords;
import ohmtrail.map.BadJoint;
import ohmtrail.map.BoxFeeders;
import ohmtrail.map.Estimate;
import ohmtrail.map.EstimatedCable;
import ohmtrail.map.MapReport;
import ohmtrail.map.RankedMap;
import ohmtrail.map.known.RunMap;
import ohmtrail.reference.Assumption;

/** The map as a document. */
public final class MapJson {
  private final CaseFile caseFile;
  private final MapReport report;
  private final JsonWriter json;

  private MapJson(CaseFile caseFile, MapReport report) {
    this.caseFile = caseFile;
    this.report = report;
    this.json = Parts.begin("map", caseFile);
  }

  /** Writes it. */
  public static String of(CaseFile caseFile, MapReport report) {
    return new MapJson(caseFile, report).write();
  }

  private String write() {
    MapWords words = new MapWords(report);
    json.member("headline", words.headline()).member("settled", report.isSettled());
    writeMaps();
    writeBoxes();
    writeCables();
    writeAlike();
    json.texts("notOnThisCircuit", report.foreign());
    writeBadJoint(words);
    writeSearch();
    Parts.taken(json, caseFile);
    Parts.assumptions(json, caseFile, List.of(Assumption.values()));
    json.texts("cautions", Cautions.forMeasuring(caseFile));
    Parts.warnings(json, caseFile);
    return json.end().toString();
  }

  private void writeMaps() {
    json.array("maps");
    for (RankedMap map : report.maps()) {
      json.object()
          .member("probability", map.probability(), Parts.PROBABILITY)
          .member("logPrior", map.logPrior())
          .member("logEvidence", map.logEvidence())
          .array("feeds");
      for (RunMap.Feed feed : map.map().feeds()) {
        json.object().member("box", feed.box()).member("feeder", feed.feeder()).end();
      }
      json.end().end();
    }
    json.end();
  }

  private void writeBoxes() {
    json.array("boxes");
    for (BoxFeeders feeders : report.boxes()) {
      json.object()
          .member("box", feeders.box())
          .member("settled", feeders.isSettled())
          .array("feeders");
      for (BoxFeeders.Share share : feeders.feeders()) {
        json.object()
            .member("feeder", share.feeder())
            .member("probability", share.probability(), Parts.PROBABILITY)
            .end();
      }
      json.end().end();
    }
    json.end();
  }

  private void writeCables() {
    json.array("cables");
    for (EstimatedCable cable : report.cables()) {
      json.object().member("feeder", cable.feeder()).member("box", cable.box());
      write("metres", cable.metres());
      write("loopOhms", cable.loopOhms());
      json.member("probability", cable.probability(), Parts.PROBABILITY)
          .member("measured", cable.isMeasured())
          .end();
    }
    json.end();
  }

  private void write(String name, Estimate estimate) {
    json.object(name)
        .member("value", estimate.value())
        .member("low", estimate.low())
        .member("high", estimate.high())
        .end();
  }

  private void writeAlike() {
    json.array("alike");
    report
        .alike()
        .forEach(
            boxes -> {
              json.array();
              boxes.forEach(json::value);
              json.end();
            });
    json.end();
  }

  private void writeBadJoint(MapWords words) {
    BadJoint bad = report.badJoint();
    json.object("badJoint")
        .member("words", words.joint())
        .member("healthyProbability", bad.soundProbability(), Parts.PROBABILITY)
        .array("boxes");
    for (BadJoint.Place place : bad.boxes()) {
      json.object()
          .member("box", place.box())
          .member("probability", place.probability(), Parts.PROBABILITY)
          .end();
    }
    json.end().array("stretches");
    for (BadJoint.Stretch stretch : bad.stretches()) {
      json.object()
          .member("feeder", stretch.feeder())
          .member("box", stretch.box())
          .member("probability", stretch.probability(), Parts.PROBABILITY)
          .end();
    }
    json.end().end();
  }

  private void writeSearch() {
    MapReport.Search search = report.search();
    json.object("search")
        .member("exact", search.exact())
        .member("mapsWeighed", (double) search.mapsWeighed(), 0)
        .member("seed", (double) search.seed(), 0)
        .member("drawn", (double) search.drawn(), 0)
        .member("readingsLeftOut", search.readingsLeftOut(), 0)
        .end();
  }
}
