/**
 * What a reading must not do under any hypothesis that is still believable: draw more than the
 * breaker carries, put a receptacle above its voltage, heat the suspected joint.
 *
 * <p>Each {@link ohmtrail.advise.safety.SafetyCheck} knows one harm and solves it by the network.
 * May import {@code predict} and what it rests on; knows nothing of minutes or of the choices.
 */
@NullMarked
package ohmtrail.advise.safety;

import org.jspecify.annotations.NullMarked;
