"""One degraded joint at a time, in numpy and scipy: the time that the same mathematics takes there.

Reads the documents that `ohmtrail check --json` and `ohmtrail locate --json` wrote of circuits drawn by
`ohmtrail score loose --write`, and weighs every joint that carries current by itself:

  nodal analysis once, dense (a few hundred nodes); heater and meter of a reading as shunts, a degraded joint as a
  change of one branch, each a rank-one update (Sherman and Morrison); slopes by every parameter by the adjoint
  method; the readings jointly normal with covariance J J' + drift of each test + own variance; the likelihood
  integrated over the logarithm of the ohms on a grid; times the prior of the joint.

It leaves out what the program does beside: wrong readings, several joints, a second linearisation, unstable joints.

  OMP_NUM_THREADS=1 python3 one_joint.py DIRECTORY     NAME.check.json and NAME.locate.json side by side
"""

import json
import pathlib
import sys
import time

import numpy as np
from scipy.linalg import solve_triangular
from scipy.special import logsumexp

BOND_OHMS = 1e-3
BOX_FARADS = 10e-12
ROLES = ("hot", "neutral", "ground")
NO_PARAMETER = -1
STEPS_PER_DECADE = 6
NEAR = 40.0  # a joint e^-40 behind the best needs no closer look


class Circuit:
    """Branches between numbered nodes, each an admittance that may follow a parameter."""

    def __init__(self, check):
        self.assume = {a["key"]: a["value"] for a in check["assumptions"]}
        self.omega = 2 * np.pi * check["supply"]["hertz"]
        self.nodes = 1  # the reference is the ground bar
        self.ends, self.siemens, self.slopes = [], [], []
        self.sigmas = []
        self.joints = {}  # id -> branch
        self.contacts = {}
        self.volts = check["supply"]["volts"]
        self.supply = self.parameter(self.assume["supply-voltage-tolerance"])
        self.source = self.parameter(self.assume["source-ohms-spread"])
        self.capacitance = self.parameter(self.assume["capacitance-spread"])
        self.lay(check)

    def parameter(self, sigma):
        self.sigmas.append(sigma)
        return len(self.sigmas) - 1

    def node(self):
        self.nodes += 1
        return self.nodes - 1

    def branch(self, a, b, siemens, *slopes):
        """Slopes: (parameter, d ln(admittance) / du) pairs."""
        self.ends.append((a, b))
        self.siemens.append(siemens)
        self.slopes.append(slopes)
        return len(self.ends) - 1

    def resistance(self, a, b, ohms, parameter, sigma):
        return self.branch(a, b, 1 / ohms, (parameter, -sigma))

    def lay(self, check):
        half = self.assume["source-ohms"] / 2
        spread = self.assume["source-ohms-spread"]
        neutral, transformer, hot = self.node(), self.node(), self.node()
        self.branch(neutral, 0, 1 / BOND_OHMS)
        self.joints["panel/neutral/supply"] = self.resistance(transformer, neutral, half, self.source, spread)
        self.feed = self.resistance(transformer, hot, half, self.source, spread)
        self.joints["panel/hot/supply"] = self.feed
        buses = {"panel": {"hot": hot, "neutral": neutral, "ground": 0}}
        self.contacts["panel"] = buses["panel"]
        boxes = {box["box"]: box for box in check["boxes"]}
        kinds = {}
        for joint in check["joints"]:
            kinds.setdefault((joint["box"], joint["conductor"]), []).append(joint)
        per_metre = 3.07 / 304.8 * (1 + 0.00323 * (self.assume["conductor-temperature"] - 75))  # 14 AWG, table 8
        if check["cables"][0]["size"] == "12 AWG":
            per_metre *= 1.93 / 3.07
        healthy, healthy_spread = self.assume["healthy-joint-ohms"], self.assume["healthy-joint-spread"]
        leaving = {}
        for cable in check["cables"]:
            leaving[cable["from"]] = leaving.get(cable["from"], 0) + 1
        for cable in check["cables"]:
            length = self.parameter(self.assume["length-tolerance"])
            tolerance = self.assume["length-tolerance"]
            metres = cable["metres"]
            near = {role: self.node() for role in ROLES}
            far = {role: self.node() for role in ROLES}
            bus = {role: self.node() for role in ROLES}
            suffix = "" if leaving[cable["from"]] == 1 else "/" + cable["to"]
            for role in ROLES:
                section = self.parameter(healthy_spread)
                start = buses[cable["from"]][role]
                self.joints[f"{cable['from']}/{role}/outgoing{suffix}"] = self.resistance(
                    start, near[role], healthy, section, healthy_spread
                )
                self.resistance(near[role], far[role], metres * per_metre, length, tolerance)
                self.joints[f"{cable['to']}/{role}/incoming"] = self.resistance(
                    far[role], bus[role], healthy, section, healthy_spread
                )
            for ends in (near, far):
                for a, b in (("hot", "neutral"), ("hot", "ground"), ("neutral", "ground")):
                    farads = self.assume["cable-capacitance"] * metres / 2
                    self.branch(
                        ends[a],
                        ends[b],
                        1j * self.omega * farads,
                        (self.capacitance, self.assume["capacitance-spread"]),
                        (length, tolerance),
                    )
            buses[cable["to"]] = bus
            self.device(cable["to"], bus, kinds, healthy, healthy_spread)

    def device(self, box, bus, kinds, healthy, spread):
        ends = dict(bus)
        for role in ROLES:
            parameter = None
            for joint in kinds[(box, role)]:
                if joint["role"] in ("tail", "contact"):
                    parameter = self.parameter(spread) if parameter is None else parameter
                    following = self.node()
                    self.joints[joint["id"]] = self.resistance(ends[role], following, healthy, parameter, spread)
                    ends[role] = following
        for a, b in (("hot", "neutral"), ("hot", "ground"), ("neutral", "ground")):
            self.branch(ends[a], ends[b], 1j * self.omega * BOX_FARADS)
        self.contacts[box] = ends

    def incidence(self):
        rows = np.zeros((len(self.ends), self.nodes))
        for number, (a, b) in enumerate(self.ends):
            rows[number, a] += 1
            rows[number, b] -= 1
        return rows[:, 1:]


def priors(circuit, check):
    """Prior of each joint that carries current, given that one is degraded."""
    weight = {joint["id"]: joint for joint in check["joints"]}
    found = {}
    for name in circuit.joints:
        joint = weight[name]
        own = circuit.assume["weight-" + joint["kind"].replace(" ", "-")]
        if joint["conductor"] == "ground":
            own *= circuit.assume["weight-ground-factor"]
        found[name] = own
    total = sum(found.values())
    return {name: own / total for name, own in found.items()}


def survey(circuit, check, locate):
    """Per reading: meter ends and siemens, load ends and siemens, value, own variance, test."""
    meters = {meter["meter"]: meter for meter in check["meters"]}
    gains = {name: circuit.parameter(meter["accuracyShare"] / np.sqrt(3)) for name, meter in meters.items()}
    inputs = {name: circuit.parameter(circuit.assume["meter-ohms-tolerance"]) for name in meters}
    powers = {load["load"]: circuit.parameter(circuit.assume["load-power-tolerance"]) for load in check["loads"]}
    watts = {load["load"]: load["watts"] for load in check["loads"]}
    tests = {test["test"]: (number, test) for number, test in enumerate(check["tests"])}
    rows = []
    for reading in locate["readings"]:
        number, test = tests[reading["test"]]
        meter = meters[reading["meter"]]
        a, b = reading["between"].split("-")
        at = circuit.contacts[reading["at"]]
        loads = [
            (circuit.contacts[on["at"]]["hot"], circuit.contacts[on["at"]]["neutral"], watts[on["load"]] / circuit.volts**2, powers[on["load"]])
            for on in test["loads"]
        ]
        siemens = 1 / meter["inputOhms"] + 1j * circuit.omega * meter["inputFarads"]
        variance = (
            (meter["accuracyCounts"] * meter["resolution"]) ** 2 / 3
            + meter["resolution"] ** 2 / 12
            + circuit.assume["reading-scatter"] ** 2
        )
        rows.append((at[a], at[b], siemens, inputs[reading["meter"]], gains[reading["meter"]], loads, reading["observed"], variance, number))
    return rows


class Readings:
    """The readings with loads and meters attached: what flows, what the meter feels, what moves it."""

    def __init__(self, circuit, rows):
        self.circuit, self.rows = circuit, rows
        incidence = circuit.incidence()
        siemens = np.array(circuit.siemens)
        impedance = np.linalg.inv(incidence.T @ (siemens[:, None] * incidence))
        drive = incidence[circuit.feed] * circuit.volts * circuit.siemens[circuit.feed] * -1.0
        count = len(rows)
        sigmas = np.array(circuit.sigmas)
        self.gap = incidence @ impedance @ incidence.T  # between branches, nothing attached
        self.across = np.empty((count, len(siemens)), complex)  # volts across each branch
        self.felt = np.empty((count, len(siemens)), complex)  # the meter's way to each branch
        self.columns = []  # updates of the gap matrix per reading
        self.shown = np.empty(count, complex)
        self.own = np.zeros((count, 3, 4), complex)  # shunts: volts, felt, siemens, parameter
        self.shunts = []
        volts0 = impedance @ drive
        for r, (a, b, meter, place, _, loads, *_rest) in enumerate(rows):
            ports = [(a, b, meter)] + [(c, d, g) for c, d, g, _ in loads]
            u = np.zeros((len(ports), circuit.nodes))
            for p, (c, d, _) in enumerate(ports):
                u[p, c] += 1
                u[p, d] -= 1
            u = u[:, 1:]
            z = impedance @ u.T
            core = np.linalg.inv(np.diag([1 / g for _, _, g in ports]) + u @ z)
            volts = volts0 - z @ (core @ (u @ volts0))
            felt = z[:, 0] - z @ (core @ (u @ z[:, 0]))
            self.shown[r] = u[0] @ volts
            self.across[r] = incidence @ volts
            self.felt[r] = incidence @ felt
            self.columns.append((incidence @ z, core))
            self.shunts.append((u, z, core, volts, felt, impedance, ports, [place] + [p for *_x, p in loads]))
        self.incidence, self.impedance = incidence, impedance
        self.matrix = np.zeros((len(siemens), len(sigmas)), complex)
        for number, slopes in enumerate(circuit.slopes):
            for parameter, slope in slopes:
                self.matrix[number, parameter] += siemens[number] * slope
        self.siemens = siemens
        self.values = np.array([row[6] for row in rows])
        self.variance = np.array([row[7] for row in rows])
        tests = np.array([row[8] for row in rows])
        self.same = (tests[:, None] == tests[None, :]).astype(float)

    def swept(self, branch, change):
        """Readings with the admittance of a branch changed, change of shape (K,)."""
        own = np.empty(len(self.rows), complex)
        for r, (columns, core) in enumerate(self.columns):
            own[r] = self.gap[branch, branch] - columns[branch] @ core @ columns[branch]
        factor = change[:, None] / (1 + change[:, None] * own)
        through = factor * self.across[:, branch]
        left = 1 + change / self.siemens[branch]  # what of the branch's volts stands across its sound part
        return (factor, through, left), np.abs(self.shown - self.felt[:, branch] * through)

    def slopes(self, branch, factor, through, left):
        """Readings' slopes by every parameter, of shape (K, readings, parameters), and what is shown."""
        to = np.empty((len(self.rows), len(self.siemens)), complex)
        for r, (columns, core) in enumerate(self.columns):
            to[r] = self.gap[:, branch] - columns @ (core @ columns[branch])
        across = self.across - to * through[:, :, None]
        felt = self.felt - to * (factor * self.felt[:, branch])[:, :, None]
        across[:, :, branch] *= left[:, None]
        felt[:, :, branch] *= left[:, None]
        shown = self.shown - self.felt[:, branch] * through
        moved = -(felt * across) @ self.matrix
        unit = np.conj(shown) / np.abs(shown)
        for r, (u, z, core, volts, feels, impedance, ports, places) in enumerate(self.shunts):
            e = self.incidence[branch]
            gap = z.T @ e - (u @ z).T @ (core @ (z.T @ e))
            for p, (_, _, siemens) in enumerate(ports):
                stands = u[p] @ volts - gap[p] * through[:, r]
                feel = u[p] @ feels - gap[p] * factor[:, r] * self.felt[r, branch]
                sigma = self.circuit.sigmas[places[p]]
                sign = -1 if p == 0 else 1  # more ohms of a meter are fewer siemens
                moved[:, r, places[p]] -= feel * stands * siemens * sigma * sign
        jacobian = (moved * unit[:, :, None]).real
        size = np.abs(shown)
        jacobian[:, :, self.circuit.supply] += size * self.circuit.sigmas[self.circuit.supply]
        for r, row in enumerate(self.rows):
            jacobian[:, r, row[4]] += size[:, r] * self.circuit.sigmas[row[4]]
        return jacobian, size

    def covariance(self, jacobian, size):
        drift = size * self.circuit.assume["supply-drift"]
        return (
            jacobian @ jacobian.transpose(0, 2, 1)
            + self.same * drift[:, :, None] * drift[:, None, :]
            + np.diag(self.variance)
        )


def log_evidence(readings, jacobian, size):
    factor = np.linalg.cholesky(readings.covariance(jacobian, size))
    residual = readings.values - size
    white = np.linalg.solve(factor, residual[:, :, None])[:, :, 0]
    return -0.5 * (white**2).sum(1) - np.log(np.einsum("kii->ki", factor)).sum(1)


def locate(check, located):
    """Probability of each box."""
    circuit = Circuit(check)
    rows = survey(circuit, check, located)
    readings = Readings(circuit, rows)
    low, high = circuit.assume["degraded-ohms-low"], circuit.assume["degraded-ohms-high"]
    ohms = np.logspace(np.log10(low), np.log10(high), int(STEPS_PER_DECADE * np.log10(high / low)) + 1)
    open_share = circuit.assume["open-share"]
    shares = np.append(np.full(len(ohms), (1 - open_share) / len(ohms)), open_share)
    any_joint = next(iter(circuit.joints.values()))
    jacobian, size = readings.slopes(any_joint, *readings.swept(any_joint, np.zeros(1, complex))[0])
    frozen = np.linalg.cholesky(readings.covariance(jacobian, size)[0])
    swept, rough = {}, {}
    for name, branch in circuit.joints.items():
        g = circuit.siemens[branch]
        change = np.append(-g * g * ohms / (1 + g * ohms), -g)
        swept[name] = readings.swept(branch, change)
        white = solve_triangular(frozen, (readings.values - swept[name][1]).T, lower=True)
        rough[name] = -0.5 * (white**2).sum(0)
    best = max(each.max() for each in rough.values())
    prior = priors(circuit, check)
    logs, names = [], []
    for name, branch in circuit.joints.items():
        near = rough[name] > 3 * best - NEAR
        if near.any():
            jacobian, size = readings.slopes(branch, *(part[near] for part in swept[name][0]))
            logs.append(np.log(prior[name]) + logsumexp(log_evidence(readings, jacobian, size), b=shares[near]))
            names.append(name)
    share = np.exp(np.array(logs) - logsumexp(logs))
    boxes = {}
    for name, probability in zip(names, share):
        box = name.split("/")[0]
        boxes[box] = boxes.get(box, 0) + probability
    return boxes


def main(folder):
    cases = []
    for file in sorted(pathlib.Path(folder).glob("*.check.json")):
        located = json.loads(file.with_name(file.name.replace(".check.", ".locate.")).read_text())
        cases.append((file.name, json.loads(file.read_text()), located))
    locate(*cases[0][1:])  # everything loaded once before the clock runs
    same = 0
    start = time.process_time()
    answers = [locate(check, located) for _, check, located in cases]
    seconds = time.process_time() - start
    distance = []
    for (name, _, located), boxes in zip(cases, answers):
        first = max(boxes, key=boxes.get)
        same += first == located["boxes"][0]["box"]
        stated = {box["box"]: box["probability"] for box in located["boxes"]}
        distance.append(max(abs(boxes.get(box, 0) - p) for box, p in stated.items()))
    print(f"{len(cases)} circuits in {seconds:.2f} s of one processor: {1000 * seconds / len(cases):.1f} ms each")
    print(f"the same first box as the program in {same}; probabilities of boxes apart by {np.median(distance):.3f} (median)")


if __name__ == "__main__":
    main(sys.argv[1])
