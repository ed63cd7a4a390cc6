package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import dev.lampwright.desk.Ask.Circumstances;
import dev.lampwright.desk.Ask.Outcome;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Several things asked for at once: all are done, in one frame, or none is. */
final class LightsAsk {
    private final Ask ask;
    private final Request request;
    private final Circumstances circumstances;

    LightsAsk(Ask ask, Request request, Circumstances circumstances) {
        this.ask = ask;
        this.request = request;
        this.circumstances = circumstances;
    }

    /** Carries them out in the request's order, as {@link Ask#done} does. */
    Outcome done(StandingWishes before) throws RefusedException {
        Optional<String> word = request.word(ask.word());
        Map<Ask, Request> parts = word.isPresent() ? all(word.get()) : named();
        Manner manner = request.manner(Optional.empty(), circumstances.now());
        StandingWishes after = before;
        List<String> said = new ArrayList<>();
        for (Map.Entry<Ask, Request> part : parts.entrySet()) {
            Outcome outcome = part.getKey().done(part.getValue(), circumstances, after);
            part.getValue().requireNothingLeft();
            after = outcome.standing();
            said.add(outcome.text());
        }
        return new Outcome(after, word.map(one -> said(one, manner)).orElse(String.join(", ", said)));
    }

    private static String said(String word, Manner manner) {
        return word.equals(Spoken.AUTO) ? Spoken.automatic("all lights") : "all lights " + word + manner.words();
    }

    private Map<Ask, Request> all(String word) throws RefusedException {
        if (!List.of(Spoken.ON, Spoken.OFF, Spoken.AUTO).contains(word)) {
            throw ask.notValid(word);
        }
        Map<Ask, Request> parts = new LinkedHashMap<>();
        for (Ask part : word.equals(Spoken.AUTO) ? Ask.thatStay() : List.of(Ask.BRIGHTNESS, Ask.WORK)) {
            if (part != Ask.WORK || !new WhiteLights(circumstances.fitting()).isEmpty()) {
                parts.put(part, request.part(part.word(), TextNode.valueOf(word)));
            }
        }
        return parts;
    }

    private Map<Ask, Request> named() throws RefusedException {
        Map<Ask, Request> parts = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> entry : request.entries(ask.word()).entrySet()) {
            Ask part = Ask.of(entry.getKey())
                    .filter(Ask.thatStay()::contains)
                    .orElseThrow(() -> new RefusedException(
                            Reason.UNKNOWN_KEY, Request.shown(entry.getKey()), "give any of " + names()));
            parts.put(part, request.part(part.word(), entry.getValue()));
        }
        if (request.has(ask.word())) {
            throw new RefusedException(Reason.NOT_VALID, ask.word(), request.shownValue(ask.word()), ask.wanted());
        }
        if (parts.isEmpty()) {
            throw ask.missing();
        }
        return parts;
    }

    private static String names() {
        return Ask.thatStay().stream().map(Ask::word).collect(Collectors.joining(", "));
    }
}
