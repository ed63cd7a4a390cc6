package dev.lampwright.desk;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Consumer;
import java.util.function.Predicate;

/**
 * All asks in effect, the newest last; how each fades at its latest change; and each light's last level above 0. Immutable.
 *
 * @param held the asks in effect
 * @param fades seconds that the latest change of something takes, including a return to automatic; all pixels share one
 * @param lit the last level above 0
 * @param seen what has been done about faults
 */
record StandingWishes(Map<Aim, Held> held, Map<Aim, Double> fades, Map<Aim, Double> lit, Seen seen) {
    /** No asks. */
    static final StandingWishes NONE = new StandingWishes(Map.of(), Map.of(), Map.of(), Seen.NONE);

    /** Keeps copies of the maps, in their order. */
    StandingWishes {
        held = Collections.unmodifiableMap(new LinkedHashMap<>(held));
        fades = Map.copyOf(fades);
        lit = Map.copyOf(lit);
    }

    /** These, with one thing set. */
    StandingWishes with(Aim aim, Setting setting, Manner manner) {
        StandingWishes with = faded(aim, manner).changed(map -> {
            map.remove(aim);
            map.put(aim, new Held(setting, manner.end()));
        });
        return setting.share() > 0 ? with.lit(aim, setting.share()) : with;
    }

    /** These, with one thing returned to automatic. */
    StandingWishes without(Aim aim, Manner manner) {
        return faded(aim, manner).changed(map -> map.remove(aim));
    }

    /** These, without what has ended. */
    StandingWishes withoutEnded(Now now) {
        return changed(map -> map.values().removeIf(one -> one.end().isOver(now)));
    }

    /** These, without what a predicate picks. */
    StandingWishes without(Predicate<Aim> picked) {
        return changed(map -> map.keySet().removeIf(picked));
    }

    /** These, with the asks in effect replaced. */
    StandingWishes changed(Consumer<Map<Aim, Held>> change) {
        Map<Aim, Held> next = new LinkedHashMap<>(held);
        change.accept(next);
        return new StandingWishes(next, fades, lit, seen);
    }

    /** These, with the time that one thing's latest change takes. */
    StandingWishes faded(Aim aim, Manner manner) {
        Map<Aim, Double> next = new HashMap<>(fades);
        if (Double.isNaN(manner.fadeSeconds())) {
            next.remove(aim);
        } else {
            next.put(aim, manner.fadeSeconds());
        }
        return new StandingWishes(held, next, lit, seen);
    }

    private StandingWishes lit(Aim aim, double share) {
        Map<Aim, Double> next = new HashMap<>(lit);
        next.put(aim, share);
        return new StandingWishes(held, fades, next, seen);
    }

    /** These, with the fault of a printer acknowledged one more time than before; the name is empty if the printer has none. */
    StandingWishes acknowledged(String printer) {
        return new StandingWishes(held, fades, lit, seen.acknowledged(printer));
    }

    /** These, with the alarm of a printer reset one more time than before. */
    StandingWishes reset(String printer) {
        return new StandingWishes(held, fades, lit, seen.reset(printer));
    }

    /** What is in effect for an ask, the oldest first. */
    List<Map.Entry<Aim, Held>> of(Ask ask) {
        List<Map.Entry<Aim, Held>> of = new ArrayList<>();
        for (Map.Entry<Aim, Held> entry : held.entrySet()) {
            if (entry.getKey().ask() == ask) {
                of.add(entry);
            }
        }
        return of;
    }

    /** A level that was asked for; empty if none was. */
    OptionalDouble share(Aim aim) {
        Held one = held.get(aim);
        return one == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(one.setting().share());
    }

    /** How long the latest change of something takes, in s; NaN for the default time. */
    float fade(Aim aim) {
        return fades.getOrDefault(aim, Double.NaN).floatValue();
    }

    /** Time until the first ask ends, in ns; empty if none ends by itself. */
    OptionalLong firstEndNanos(Now now) {
        return held.values().stream()
                .map(Held::end)
                .filter(End::ends)
                .mapToLong(end -> end.leftNanos(now))
                .min();
    }
}
