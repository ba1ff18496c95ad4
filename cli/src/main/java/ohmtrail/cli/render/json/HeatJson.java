package ohmtrail.cli.render.json;

import java.util.Locale;
import java.util.Optional;
import ohmtrail.report.heat.Heat;
import ohmtrail.report.heat.HeatLimit;
import ohmtrail.report.heat.HeatRange;
import ohmtrail.report.heat.PublishedHeat;
import ohmtrail.report.heat.SuspectHeat;

/** Heat as a member {@code heat}: every watt is amperes squared times ohms of its own object. */
final class HeatJson {
  private HeatJson() {}

  /** That of a suspect; null where there is none to tell. */
  static void write(JsonWriter json, Optional<SuspectHeat> heat) {
    if (heat.isEmpty()) {
      json.nothing("heat");
      return;
    }
    SuspectHeat told = heat.get();
    json.object("heat");
    if (told.measured().isPresent()) {
      json.object("measured").member("test", told.measured().get().test());
      range(json, told.measured().get().heat());
      json.end();
    } else {
      json.nothing("measured");
    }
    json.object("could");
    limit(json, told.limit());
    range(json, told.could());
    json.end()
        .member("beforePanel", told.beforePanel(), Parts.PROBABILITY)
        .member("mayBeOpen", told.mayBeOpen());
    published(json);
    json.end();
  }

  /** The worst at ohms that are supposed. */
  static void write(JsonWriter json, Heat worst, HeatLimit limit) {
    json.object("heat").object("could");
    limit(json, limit);
    heat(json, "worst", worst);
    json.end();
    published(json);
    json.end();
  }

  private static void limit(JsonWriter json, HeatLimit limit) {
    json.member("boundedBy", limit.by().name().toLowerCase(Locale.ROOT))
        .member("ratedAmperes", limit.ratedAmperes())
        .member("drivingVolts", limit.drivingVolts());
  }

  private static void range(JsonWriter json, HeatRange range) {
    if (range.estimate().isPresent()) {
      heat(json, "estimate", range.estimate().get());
    } else {
      json.nothing("estimate");
    }
    heat(json, "least", range.least());
    heat(json, "most", range.most());
  }

  private static void heat(JsonWriter json, String name, Heat heat) {
    json.object(name);
    Parts.ohms(json, "ohms", heat.ohms());
    json.member("amperes", heat.amperes()).member("watts", heat.watts()).end();
  }

  private static void published(JsonWriter json) {
    json.array("published");
    for (PublishedHeat each : PublishedHeat.ALL) {
      json.object()
          .member("watts", each.watts())
          .member("amperes", each.amperes())
          .member("source", PublishedHeat.SOURCE)
          .end();
    }
    json.end();
  }
}
