package org.girandole.plan.schedule;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.girandole.plan.script.Chain;
import org.girandole.plan.script.Effect;
import org.girandole.plan.script.ShowScript;

/** Effects and chains by name. */
final class Catalogue {
    private final Map<String, Effect> effects = new HashMap<>();
    private final Map<String, Chain> chains = new HashMap<>();

    Catalogue(ShowScript script) {
        script.effects().forEach(effect -> effects.putIfAbsent(effect.name(), effect));
        script.chains().forEach(chain -> chains.putIfAbsent(chain.name(), chain));
    }

    Optional<Effect> effect(String name) {
        return Optional.ofNullable(effects.get(name));
    }

    Optional<Chain> chain(String name) {
        return Optional.ofNullable(chains.get(name));
    }
}
