package dev.lampwright.survey;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** All evidence, put to every value once. */
final class Bench {
    private final List<Evidence> evidence;
    private final List<PairEvidence> pairEvidence = List.of(new SiblingEvidence(), new FollowEvidence());
    private final Map<Trail, Map<Role, Judgement>> judgements = new HashMap<>();

    /**
     * Weighs every value.
     *
     * @param trails all values
     * @param thermometer what tells the unit of temperatures
     */
    Bench(Collection<Trail> trails, Thermometer thermometer) {
        evidence = List.of(
                new KindEvidence(),
                new NameEvidence(),
                new UnitEvidence(),
                new RangeEvidence(thermometer),
                new StepEvidence(),
                new TrendEvidence(),
                new PaceEvidence(),
                new CountEvidence(),
                new WordsEvidence(),
                new FaultTextEvidence(),
                new EventEvidence());
        trails.forEach(trail -> judgements.put(trail, judged(trail)));
        PlaceEvidence place = new PlaceEvidence(judgements);
        judgements.forEach((trail, roles) ->
                roles.replaceAll((role, judgement) -> judgement.with(place.weigh(trail, role))));
    }

    private Map<Role, Judgement> judged(Trail trail) {
        Map<Role, Judgement> roles = new EnumMap<>(Role.class);
        for (Role role : Role.values()) {
            Judgement judgement = Judgement.OPEN;
            for (Evidence one : evidence) {
                judgement = judgement.with(one.weigh(trail, role));
            }
            roles.put(role, judgement);
        }
        return roles;
    }

    /** What a value is worth in a role. */
    Judgement of(Trail trail, Role role) {
        return judgements.get(trail).get(role);
    }

    /** What speaks for one value being the target of another. */
    Judgement ofPair(Trail actual, Trail target) {
        Judgement judgement = Judgement.OPEN;
        for (PairEvidence one : pairEvidence) {
            judgement = judgement.with(one.weigh(actual, target));
        }
        return judgement;
    }

    /** The values, in no order. */
    List<Trail> trails() {
        return new ArrayList<>(judgements.keySet());
    }
}
