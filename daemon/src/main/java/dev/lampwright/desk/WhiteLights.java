package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.desk.Ask.Circumstances;
import dev.lampwright.desk.Ask.Outcome;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Fitting.DimmerUse;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The white lights among the dimmers: all of them, or some by name, can be given a level. */
final class WhiteLights {
    private final List<String> names;

    /**
     * Finds them.
     *
     * @param fitting what is fitted
     */
    WhiteLights(Fitting fitting) {
        names = fitting.dimmers().stream()
                .filter(DimmerUse::isWhite)
                .map(DimmerUse::name)
                .toList();
    }

    /** Whether there are none. */
    boolean isEmpty() {
        return names.isEmpty();
    }

    /** Sets the levels that a request asks for, as {@link Ask#done} does. */
    Outcome done(Ask ask, Request request, Circumstances circumstances, StandingWishes before) throws RefusedException {
        if (isEmpty()) {
            throw new RefusedException(Reason.NO_WHITE_LIGHT);
        }
        return request.hasEntries(ask.word())
                ? byName(ask, request, circumstances, before)
                : alike(ask, request, circumstances, before);
    }

    private Outcome alike(Ask ask, Request request, Circumstances circumstances, StandingWishes before)
            throws RefusedException {
        Optional<String> name = request.word(Ask.Key.DIMMER.key());
        WantedLevel level = request.needLevel(ask.word(), ask.wanted());
        Manner manner = request.manner(Optional.empty(), circumstances.now());
        if (name.isPresent()) {
            StandingWishes after = set(ask, require(name.get()), level, manner, before);
            return new Outcome(after, said(name.get(), after.share(new Aim(ask, name.get())), manner));
        }
        StandingWishes after = before;
        for (String each : names) {
            after = set(ask, each, level, manner, after);
        }
        return new Outcome(after, said(ask, after, manner));
    }

    /** In one word if all are alike. */
    private String said(Ask ask, StandingWishes after, Manner manner) {
        List<String> each = new ArrayList<>();
        Set<OptionalDouble> shares = new HashSet<>();
        for (String name : names) {
            OptionalDouble share = after.share(new Aim(ask, name));
            shares.add(share);
            each.add(said(name, share, manner));
        }
        return shares.size() == 1 ? said("white light", shares.iterator().next(), manner) : String.join(", ", each);
    }

    private Outcome byName(Ask ask, Request request, Circumstances circumstances, StandingWishes before)
            throws RefusedException {
        Map<String, WantedLevel> levels = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> entry : request.entries(ask.word()).entrySet()) {
            String name = require(entry.getKey());
            JsonNode node = entry.getValue();
            levels.put(
                    name,
                    WantedLevel.of(node)
                            .orElseThrow(() -> new RefusedException(
                                    Reason.NOT_VALID,
                                    ask.word() + " " + name,
                                    Request.shown(node),
                                    "give " + WantedLevel.WANTED)));
        }
        if (levels.isEmpty()) {
            throw ask.missing();
        }
        if (request.has(Ask.Key.DIMMER.key())) {
            throw new RefusedException(
                    Reason.NOT_VALID,
                    Ask.Key.DIMMER.key(),
                    request.shownValue(Ask.Key.DIMMER.key()),
                    "give names in one place only");
        }
        Manner manner = request.manner(Optional.empty(), circumstances.now());
        StandingWishes after = before;
        List<String> said = new ArrayList<>();
        for (Map.Entry<String, WantedLevel> entry : levels.entrySet()) {
            after = set(ask, entry.getKey(), entry.getValue(), manner, after);
            said.add(said(entry.getKey(), after.share(new Aim(ask, entry.getKey())), manner));
        }
        return new Outcome(after, String.join(", ", said));
    }

    private static StandingWishes set(Ask ask, String name, WantedLevel level, Manner manner, StandingWishes before) {
        Aim aim = new Aim(ask, name);
        if (level.isAuto()) {
            return before.without(aim, manner);
        }
        return before.with(aim, Setting.of(level.orWhenOn(before.lit().getOrDefault(aim, 1.0))), manner);
    }

    private String require(String name) throws RefusedException {
        if (!names.contains(name)) {
            throw new RefusedException(Reason.UNKNOWN_LIGHT, Request.shown(name), String.join(", ", names));
        }
        return name;
    }

    private static String said(String what, OptionalDouble share, Manner manner) {
        return share.isPresent()
                ? what + " " + Spoken.share(share.getAsDouble()) + manner.words()
                : Spoken.automatic(what);
    }
}
