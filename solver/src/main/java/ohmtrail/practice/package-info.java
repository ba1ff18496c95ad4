/**
 * Circuits, faults and surveys made up by chance, to train on and to score a ranking with.
 *
 * <p>A {@link ohmtrail.practice.Population} says what is drawn: the kind of circuit, of fault and
 * of survey, and what goes wrong on the way. {@link ohmtrail.practice.Practice} draws the case of a
 * number: everything that the method knows only roughly is drawn from the very tolerance that the
 * method states for it, so that probabilities can be held against frequencies. A {@link
 * ohmtrail.practice.Truth} is what the method does not get to see.
 *
 * <p>Nothing is filtered: a fault that no reading touches is drawn as often as its prior says, with
 * one stated exception. Ground joints are left out of the ordinary populations, because no current
 * of their tests flows there and no reading of them is held to ground; the population that is drawn
 * from the assumptions themselves has them.
 *
 * <p>May import {@code locate} and what it rests on; {@code practice.score} builds on it, not the
 * other way round.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.practice;

import org.jspecify.annotations.NullMarked;
