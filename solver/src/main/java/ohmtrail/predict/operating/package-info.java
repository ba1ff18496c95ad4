/**
 * Where a network and the loads in it settle, when what a load draws depends on its voltage.
 *
 * <p>A {@link ohmtrail.predict.operating.Feed} is what the rest of the network offers the loads; an
 * {@link ohmtrail.predict.operating.OperatingPoint} is where they settle, the voltages as high as
 * they can stay; a load that has no such point is off. {@link
 * ohmtrail.predict.operating.SettledNetwork} is the network with everything in place then, with the
 * responses that slopes are made of.
 *
 * <p>May import {@code network} and {@code survey.load}; knows nothing of wiring.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.predict.operating;

import org.jspecify.annotations.NullMarked;
