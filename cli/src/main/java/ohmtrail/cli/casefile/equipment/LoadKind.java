package ohmtrail.cli.casefile.equipment;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import ohmtrail.survey.load.ElectronicLoad;
import ohmtrail.survey.load.FilamentLamp;
import ohmtrail.survey.load.HeatingElement;
import ohmtrail.survey.load.KnownCurrent;
import ohmtrail.survey.load.Load;
import ohmtrail.survey.load.Motor;
import ohmtrail.survey.load.NameplateCurrent;
import ohmtrail.survey.load.Rating;

/** The words for what a load is. */
public enum LoadKind {
  HEATING_ELEMENT("heating-element", HeatingElement.class, Rating.Quantity.POWER) {
    @Override
    Load build(LoadDraft draft) {
      return new HeatingElement(draft.name(), draft.rating(), draft.volts());
    }
  },
  LAMP("lamp", FilamentLamp.class, Rating.Quantity.POWER) {
    @Override
    Load build(LoadDraft draft) {
      return new FilamentLamp(draft.name(), draft.rating(), draft.volts());
    }
  },
  ELECTRONIC("electronic", ElectronicLoad.class, Rating.Quantity.POWER) {
    @Override
    Load build(LoadDraft draft) {
      return new ElectronicLoad(
          draft.name(),
          draft.rating(),
          draft.volts(),
          draft.get(LoadDraft.Option.CUT_OUT, ElectronicLoad.USUAL_CUT_OUT_SHARE));
    }
  },
  MOTOR("motor", Motor.class, Rating.Quantity.POWER) {
    @Override
    Load build(LoadDraft draft) {
      return new Motor(
          draft.name(),
          draft.rating(),
          draft.volts(),
          draft.get(LoadDraft.Option.POWER_FACTOR, Motor.USUAL_POWER_FACTOR),
          draft.get(LoadDraft.Option.STALL, Motor.USUAL_STALL_SHARE));
    }
  },
  MEASURED("measured", KnownCurrent.class, Rating.Quantity.CURRENT) {
    @Override
    Load build(LoadDraft draft) {
      return new KnownCurrent(draft.name(), draft.rating(), draft.volts());
    }
  },
  NAMEPLATE("nameplate", NameplateCurrent.class, Rating.Quantity.CURRENT) {
    @Override
    Load build(LoadDraft draft) {
      return new NameplateCurrent(draft.name(), draft.rating(), draft.volts());
    }
  };

  /** What a word means; the first of a kind is the one to write. */
  static final Map<String, LoadKind> WORDS = words();

  private final String word;
  private final Class<? extends Load> type;
  private final Rating.Quantity quantity;

  LoadKind(String word, Class<? extends Load> type, Rating.Quantity quantity) {
    this.word = word;
    this.type = type;
    this.quantity = quantity;
  }

  /** The load that a draft of this kind describes. */
  abstract Load build(LoadDraft draft);

  public String word() {
    return word;
  }

  /** What it is rated by. */
  Rating.Quantity quantity() {
    return quantity;
  }

  /** What a bare rating stands for. */
  static LoadKind usual(Rating.Quantity quantity) {
    return quantity == Rating.Quantity.POWER ? HEATING_ELEMENT : NAMEPLATE;
  }

  /** The words to write, to offer. */
  static String listed() {
    return Arrays.stream(values()).map(LoadKind::word).collect(Collectors.joining(", "));
  }

  /** The kind of a load. */
  public static LoadKind of(Load load) {
    return Arrays.stream(values())
        .filter(kind -> kind.type.isInstance(load))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("No word of a case file means (" + load + ")."));
  }

  private static Map<String, LoadKind> words() {
    Map<String, LoadKind> words = new LinkedHashMap<>();
    for (LoadKind kind : values()) {
      words.put(kind.word, kind);
    }
    words.put("heater", HEATING_ELEMENT);
    words.put("filament-lamp", LAMP);
    words.put("filament", LAMP);
    return words;
  }
}
