/**
 * What draws current when it is plugged in or switched on, and how that depends on its voltage.
 *
 * <p>A kind of load is a record here. Everybody else asks only {@link ohmtrail.survey.load.Load}:
 * what it is rated at, and how its admittance follows its voltage. Where the circuit leaves it is
 * for {@code predict} to say.
 *
 * <p>May import {@code ohmtrail.reference}.
 *
 * <p>Part of the library.
 */
@NullMarked
package ohmtrail.survey.load;

import org.jspecify.annotations.NullMarked;
