package ohmtrail.locate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import ohmtrail.circuit.Circuit;
import ohmtrail.circuit.ConductorRole;
import ohmtrail.reference.Assumption;
import ohmtrail.reference.Assumptions;
import ohmtrail.survey.LoadInUse;
import ohmtrail.survey.Meter;
import ohmtrail.survey.Reading;
import ohmtrail.survey.Survey;
import ohmtrail.survey.Test;
import ohmtrail.survey.load.Load;

/**
 * What the meters show at any point of the parameters with any ohms added in one joint, and the
 * slopes, each time from the nodal equations of the whole circuit. Keeps its working space: not for
 * two threads.
 */
final class BruteForceModel {
  /** A load that is on, ready to be put into the matrix. */
  private record Shunt(int a, int b, double siemens, int parameter) {}

  /** A reading, ready to be taken. */
  private record Probe(
      int a,
      int b,
      double meterSiemens,
      double meterCapacitiveSiemens,
      int ohmsParameter,
      int gainParameter) {}

  /** An open switch, ohms: as good as nothing flows (assumption). */
  private static final double OPEN_SWITCH_OHMS = 1e12;

  /**
   * What is taken while nothing is touched.
   *
   * @param open the boxes whose switch is open
   */
  private record Moment(
      List<Shunt> loads, List<Probe> probes, Set<String> open, int driftParameter) {}

  private final BruteForceNetwork network;
  private final BruteForceParameters parameters;
  private final List<Moment> moments = new ArrayList<>();
  private final double nominalVolts;
  private final int supplyPlace;
  private final int sourcePlace;
  private final int nodes;

  /** The readings, volts. */
  final double[] observed;

  /** Variance of each reading's own error, square volts. */
  final double[] variance;

  /** Predicted volts of the last evaluation. */
  final double[] volts;

  /** Slopes of the last evaluation, volts per unit of u. */
  final double[][] slopes;

  private final SkylineMatrix idle;
  private final SkylineMatrix matrix;
  private final double[] resistances;
  private final double[] capacitances;

  /** Ohms of the degraded joint without the added ones, as a share of all; 1 elsewhere. */
  private final double[] healthyShares;

  private final double[] idleRe;
  private final double[] idleIm;
  private final double[] supplyRe;
  private final double[] supplyIm;
  private final double[] meterRe;
  private final double[] meterIm;
  private double source;
  private double sourceHealthyShare;

  BruteForceModel(Circuit circuit, Survey survey, Assumptions assumptions) {
    this.parameters = new BruteForceParameters(circuit, survey, assumptions);
    this.network = new BruteForceNetwork(circuit, assumptions, parameters);
    this.nominalVolts = circuit.supply().volts();
    this.supplyPlace = parameters.place("supply");
    this.sourcePlace = parameters.place("source");
    List<Double> readings = new ArrayList<>();
    List<Double> variances = new ArrayList<>();
    double scatter = assumptions.value(Assumption.READING_SCATTER);
    for (Test test : survey.tests()) {
      moments.add(moment(circuit, survey, test));
      for (Reading reading : test.readings()) {
        double own = survey.meter(reading.meter()).readingSigma();
        readings.add(reading.value());
        variances.add(own * own + scatter * scatter);
      }
    }
    this.observed = readings.stream().mapToDouble(Double::doubleValue).toArray();
    this.variance = variances.stream().mapToDouble(Double::doubleValue).toArray();
    this.volts = new double[observed.length];
    this.slopes = new double[observed.length][parameters.size()];
    this.idle = network.emptyMatrix();
    this.matrix = network.emptyMatrix();
    this.nodes = idle.size();
    this.resistances = new double[network.resistors.size()];
    this.capacitances = new double[network.capacitors.size()];
    this.healthyShares = new double[network.resistors.size()];
    this.idleRe = new double[nodes];
    this.idleIm = new double[nodes];
    this.supplyRe = new double[nodes];
    this.supplyIm = new double[nodes];
    this.meterRe = new double[nodes];
    this.meterIm = new double[nodes];
  }

  private Moment moment(Circuit circuit, Survey survey, Test test) {
    List<LoadInUse> uses = new ArrayList<>(test.loads());
    survey.hardWired().stream()
        .filter(use -> !test.switching().off().contains(use.load()))
        .forEach(uses::add);
    List<Shunt> loads = new ArrayList<>();
    for (LoadInUse use : uses) {
      Load load = survey.load(use.load());
      List<ConductorRole> device = circuit.deviceConductors(circuit.box(use.box()).orElseThrow());
      boolean behindSwitch = !device.contains(ConductorRole.HOT);
      loads.add(
          new Shunt(
              network.plugPoint(
                  use.box(), behindSwitch ? ConductorRole.SWITCHED : ConductorRole.HOT),
              network.plugPoint(use.box(), ConductorRole.NEUTRAL),
              load.ratedSiemens(),
              parameters.place(BruteForceParameters.power(load.name()))));
    }
    List<Probe> probes = new ArrayList<>();
    for (Reading reading : test.readings()) {
      Meter meter = survey.meter(reading.meter());
      probes.add(
          new Probe(
              network.plugPoint(reading.box(), reading.between().orElseThrow().first()),
              network.plugPoint(reading.box(), reading.between().orElseThrow().second()),
              1 / meter.inputOhms(),
              network.omega * meter.inputFarads(),
              parameters.place(BruteForceParameters.meterOhms(meter.name())),
              parameters.place(BruteForceParameters.gain(meter.name()))));
    }
    return new Moment(
        loads,
        probes,
        test.switching().open(),
        parameters.place(BruteForceParameters.drift(test.name())));
  }

  int readingCount() {
    return observed.length;
  }

  /** Second slope of a parameter's quantity over its first. */
  double bend(int parameter, double u) {
    return parameters.bend(parameter, u);
  }

  int parameterCount() {
    return parameters.size();
  }

  /** Takes every reading; leaves the result in {@link #volts} and {@link #slopes}. */
  void evaluate(BruteForceFault fault, double[] u) {
    Optional<Set<String>> assembled = Optional.empty();
    int reading = 0;
    for (Moment moment : moments) {
      if (!assembled.equals(Optional.of(moment.open))) {
        assembleIdle(fault, u, moment.open);
        assembled = Optional.of(moment.open);
      }
      matrix.copyFrom(idle);
      for (Shunt load : moment.loads) {
        matrix.stamp(load.a, load.b, load.siemens * factor(load.parameter, u), 0);
      }
      matrix.factor();
      Arrays.fill(idleRe, 0);
      Arrays.fill(idleIm, 0);
      idleRe[network.hotBar] = 1 / source;
      idleRe[network.transformer] = -1 / source;
      matrix.solve(idleRe, idleIm);
      for (Probe probe : moment.probes) {
        take(reading++, probe, moment, u);
      }
    }
  }

  private double factor(int place, double[] u) {
    return place == BruteForceNetwork.NONE ? 1 : parameters.factor(place, u[place]);
  }

  private void assembleIdle(BruteForceFault fault, double[] u, Set<String> open) {
    idle.clear();
    for (int k = 0; k < resistances.length; k++) {
      BruteForceNetwork.Resistor resistor = network.resistors.get(k);
      double healthy = resistor.ohms() * factor(resistor.parameter(), u);
      boolean degraded = fault.isIn(resistor.joint());
      boolean apart = open.contains(resistor.breaks());
      double sound = apart ? OPEN_SWITCH_OHMS : healthy;
      resistances[k] = degraded ? sound + fault.ohms() : sound;
      // An open switch has no sound ohms that could follow a parameter.
      healthyShares[k] = apart ? 0 : degraded ? healthy / resistances[k] : 1;
      idle.stamp(resistor.a(), resistor.b(), 1 / resistances[k], 0);
    }
    for (int k = 0; k < capacitances.length; k++) {
      BruteForceNetwork.Capacitor c = network.capacitors.get(k);
      capacitances[k] = c.siemens() * factor(c.parameter(), u) * factor(c.secondParameter(), u);
      idle.stamp(c.a(), c.b(), 0, capacitances[k]);
    }
    double healthySource = network.sourceOhms * factor(sourcePlace, u);
    source = healthySource + (fault.isIn(network.sourceJoint) ? fault.ohms() : 0);
    sourceHealthyShare = healthySource / source;
    idle.stamp(network.hotBar, network.transformer, 1 / source, 0);
  }

  /**
   * One reading. The supply is one volt; {@code supply} becomes the node voltages with the meter in
   * place, {@code meter} those that one ampere through the meter's probe points would make, which
   * by reciprocity is how the meter responds to a current anywhere.
   */
  private void take(int r, Probe probe, Moment moment, double[] u) {
    System.arraycopy(idleRe, 0, supplyRe, 0, nodes);
    System.arraycopy(idleIm, 0, supplyIm, 0, nodes);
    Arrays.fill(meterRe, 0);
    Arrays.fill(meterIm, 0);
    inject(probe.a, 1);
    inject(probe.b, -1);
    matrix.solve(meterRe, meterIm);
    double meterSiemens = probe.meterSiemens / factor(probe.ohmsParameter, u);
    connectMeter(probe, meterSiemens);

    double vRe = across(supplyRe, probe.a, probe.b);
    double vIm = across(supplyIm, probe.a, probe.b);
    double size = Math.hypot(vRe, vIm);
    double scale =
        nominalVolts
            * factor(supplyPlace, u)
            * factor(probe.gainParameter, u)
            * (1 + parameters.sigma(moment.driftParameter) * u[moment.driftParameter]);
    volts[r] = scale * size;
    Arrays.fill(slopes[r], 0);
    if (size > 0) {
      addNetworkSlopes(u, slopes[r], scale * vRe / size, scale * vIm / size);
      for (Shunt load : moment.loads) {
        double siemens = load.siemens * factor(load.parameter, u);
        slopes[r][load.parameter] -=
            parameters.sigma(load.parameter)
                * projected(load.a, load.b, siemens, 0, scale * vRe / size, scale * vIm / size);
      }
      slopes[r][probe.ohmsParameter] +=
          parameters.sigma(probe.ohmsParameter)
              * projected(
                  probe.a, probe.b, meterSiemens, 0, scale * vRe / size, scale * vIm / size);
    }
    slopes[r][supplyPlace] += volts[r] * parameters.sigma(supplyPlace);
    slopes[r][probe.gainParameter] += volts[r] * parameters.sigma(probe.gainParameter);
    slopes[r][moment.driftParameter] +=
        scale
            * size
            * parameters.sigma(moment.driftParameter)
            / (1 + parameters.sigma(moment.driftParameter) * u[moment.driftParameter]);
  }

  private void inject(int node, double amperes) {
    if (node >= 0) {
      meterRe[node] += amperes;
    }
  }

  /** Sherman and Morrison's formula for the meter's admittance y: x - z (y x_m) / (1 + y z_m). */
  private void connectMeter(Probe probe, double siemens) {
    double yRe = siemens;
    double yIm = probe.meterCapacitiveSiemens;
    double zRe = across(meterRe, probe.a, probe.b);
    double zIm = across(meterIm, probe.a, probe.b);
    double vRe = across(supplyRe, probe.a, probe.b);
    double vIm = across(supplyIm, probe.a, probe.b);
    double denRe = 1 + yRe * zRe - yIm * zIm;
    double denIm = yRe * zIm + yIm * zRe;
    double norm = denRe * denRe + denIm * denIm;
    double qRe = (yRe * denRe + yIm * denIm) / norm;
    double qIm = (yIm * denRe - yRe * denIm) / norm;
    double kRe = qRe * vRe - qIm * vIm;
    double kIm = qRe * vIm + qIm * vRe;
    double sRe = denRe / norm;
    double sIm = -denIm / norm;
    for (int i = 0; i < nodes; i++) {
      double mRe = meterRe[i];
      double mIm = meterIm[i];
      supplyRe[i] -= kRe * mRe - kIm * mIm;
      supplyIm[i] -= kRe * mIm + kIm * mRe;
      meterRe[i] = mRe * sRe - mIm * sIm;
      meterIm[i] = mRe * sIm + mIm * sRe;
    }
  }

  private static double across(double[] x, int a, int b) {
    return (a < 0 ? 0 : x[a]) - (b < 0 ? 0 : x[b]);
  }

  /**
   * The change of the reading, sign reversed, when the admittance between a and b grows by the
   * given one: transfer times voltage times admittance, along the direction of the reading.
   */
  private double projected(int a, int b, double g, double s, double alongRe, double alongIm) {
    double tRe = across(meterRe, a, b);
    double tIm = across(meterIm, a, b);
    double vRe = across(supplyRe, a, b);
    double vIm = across(supplyIm, a, b);
    double pRe = tRe * vRe - tIm * vIm;
    double pIm = tRe * vIm + tIm * vRe;
    return alongRe * (g * pRe - s * pIm) + alongIm * (g * pIm + s * pRe);
  }

  private void addNetworkSlopes(double[] u, double[] row, double alongRe, double alongIm) {
    for (int k = 0; k < resistances.length; k++) {
      BruteForceNetwork.Resistor resistor = network.resistors.get(k);
      int place = resistor.parameter();
      if (place != BruteForceNetwork.NONE) {
        // Of a degraded joint only the healthy share follows the parameter.
        row[place] +=
            parameters.slope(place, u[place])
                * projected(
                    resistor.a(),
                    resistor.b(),
                    healthyShares[k] / resistances[k],
                    0,
                    alongRe,
                    alongIm);
      }
    }
    for (int k = 0; k < capacitances.length; k++) {
      BruteForceNetwork.Capacitor c = network.capacitors.get(k);
      if (c.parameter() != BruteForceNetwork.NONE) {
        double slope = projected(c.a(), c.b(), 0, capacitances[k], alongRe, alongIm);
        row[c.parameter()] -= parameters.sigma(c.parameter()) * slope;
        row[c.secondParameter()] -= parameters.sigma(c.secondParameter()) * slope;
      }
    }
    row[sourcePlace] +=
        parameters.slope(sourcePlace, u[sourcePlace]) * sourceSlope(alongRe, alongIm);
  }

  /** As for a resistor, but with the supply's one volt in series, and its current given. */
  private double sourceSlope(double alongRe, double alongIm) {
    double tRe = across(meterRe, network.hotBar, network.transformer);
    double tIm = across(meterIm, network.hotBar, network.transformer);
    double iRe = (across(supplyRe, network.hotBar, network.transformer) - 1) / source;
    double iIm = across(supplyIm, network.hotBar, network.transformer) / source;
    return sourceHealthyShare
        * (alongRe * (tRe * iRe - tIm * iIm) + alongIm * (tRe * iIm + tIm * iRe));
  }
}
