/**
 * From readings to a joint: what a user of the library asks and what comes back.
 *
 * <p>A hypothesis is a sound circuit, one degraded joint, a joint whose ohms depend on the current,
 * several joints, or that nothing on offer fits. Its posterior is its prior times its marginal
 * likelihood: the likelihood of the readings, integrated over the added ohms and over everything
 * known only roughly. A {@link ohmtrail.locate.Suspect} is a joint, or a set of joints that the
 * readings cannot tell apart.
 *
 * <p>The work is done in rooms, each of which may import those to its right alone:
 *
 * <pre>
 *   locate -> search -> fit -> hypothesis -> evidence -> settings
 * </pre>
 *
 * <p>What is public there is for the rooms to the left and for studies; a user needs this package.
 * All may import {@code predict} and what it rests on; there is no rule about wiring here, only the
 * network and the evidence.
 *
 * <p>{@link ohmtrail.locate.Diagnosis} and all that hangs on it are part of the library; the rest
 * is inner and may change.
 */
@NullMarked
package ohmtrail.locate;

import org.jspecify.annotations.NullMarked;
