/**
 * What a step brings a hand to, and what has to be off for it: which boxes are open, which of them
 * are live inside, and whose breakers feed them.
 *
 * <p>May import {@code survey} and what it rests on. It weighs nothing: what a step does to the
 * circuit is {@code advise.safety}'s.
 */
@NullMarked
package ohmtrail.advise.work;

import org.jspecify.annotations.NullMarked;
