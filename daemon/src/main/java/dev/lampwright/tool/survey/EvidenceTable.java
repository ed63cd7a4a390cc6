package dev.lampwright.tool.survey;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** All evidence of single values, each applied once to every value in every role. */
final class EvidenceTable {
    private final List<Evidence> evidence;
    private final ForeignEvidence foreign;
    private final Map<Trail, Map<Role, Judgement>> judgements = new HashMap<>();

    /**
     * Weighs every value.
     *
     * @param trails all values
     * @param thermometer what determines the unit of temperatures
     */
    EvidenceTable(Collection<Trail> trails, Thermometer thermometer) {
        foreign = new ForeignEvidence(trails);
        evidence = all(thermometer, trails);
        trails.forEach(trail -> judgements.put(trail, judged(trail)));
    }

    /**
     * Every kind of evidence that a value gives by itself.
     *
     * @param thermometer what determines the unit of temperatures
     * @param trails all values
     */
    static List<Evidence> all(Thermometer thermometer, Collection<Trail> trails) {
        return List.of(
                new Evidence.OfKind(),
                new NameEvidence(),
                new ForeignEvidence(trails),
                new Evidence.OfUnit(),
                new RangeEvidence(thermometer),
                new StepEvidence(),
                new TrendEvidence(),
                new Evidence.OfPace(),
                new CompletionEvidence(trails),
                new Evidence.OfCount(),
                new WordsEvidence(),
                new Evidence.OfFaultText(),
                new Evidence.OfEvent());
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

    /** The score of a value in a role. */
    Judgement of(Trail trail, Role role) {
        return judgements.get(trail).get(role);
    }

    /** How much a foreign word in a value's own name counts against it. */
    double foreign(Trail trail) {
        boolean own = trail.names().ownSpeaksOf(Concept.FOREIGN) && !foreign.standsApart(trail);
        return own ? ForeignEvidence.WEIGHT : 0;
    }

    /** The values, in no order. */
    List<Trail> trails() {
        return new ArrayList<>(judgements.keySet());
    }
}
