package ohmtrail.advise.safety;

import ohmtrail.circuit.Circuit;
import ohmtrail.predict.Degradation;
import ohmtrail.predict.LoadState;

/**
 * One test under one hypothesis.
 *
 * @param circuit the circuit
 * @param state the circuit with the loads of the test on
 * @param loadedSeconds how long the loads are on
 * @param supposed the joint that the hypothesis says is degraded, with its ohms; 0 ohm in any joint
 *     for a sound circuit
 */
public record Trial(Circuit circuit, LoadState state, double loadedSeconds, Degradation supposed) {}
