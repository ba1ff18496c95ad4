/**
 * What a test must not do under any hypothesis that is still believable: draw more than breaker and
 * cables carry, put a receptacle above its voltage, put what a hand reaches at a voltage, heat the
 * suspected joint; with loads plugged in and wired in, and with every meter that draws.
 *
 * <p>Each {@link ohmtrail.advise.safety.SafetyCheck} knows one harm and solves it by the network.
 * May import {@code predict} and what it rests on; knows nothing of minutes or of the choices.
 *
 * <p>Inner, and no part of the library: it may change with any version.
 */
@NullMarked
package ohmtrail.advise.safety;

import org.jspecify.annotations.NullMarked;
