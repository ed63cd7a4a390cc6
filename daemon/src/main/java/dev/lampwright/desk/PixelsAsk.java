package dev.lampwright.desk;

import com.fasterxml.jackson.databind.JsonNode;
import dev.lampwright.desk.Ask.Circumstances;
import dev.lampwright.desk.Ask.Outcome;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Single pixels and zones in their own colours, for a time. Everything in one message takes effect in one frame. */
final class PixelsAsk {
    /** The maximum number of zones, pixels and runs with colours at a time; more than the single pixels that anybody sets one by one. */
    static final int MOST_PLACES = 1024;

    private final Ask ask;
    private final Circumstances circumstances;
    private final Places places;

    PixelsAsk(Ask ask, Circumstances circumstances) {
        this.ask = ask;
        this.circumstances = circumstances;
        places = new Places(circumstances.fitting());
    }

    /** Lights the pixels that a request asks for, as {@link Ask#done} does. */
    Outcome done(Request request, StandingWishes before) throws RefusedException {
        Optional<String> word = request.word(ask.word());
        Map<String, JsonNode> entries = request.entries(ask.word());
        if (request.has(ask.word())) {
            throw new RefusedException(
                    Reason.NOT_VALID,
                    ask.word(),
                    request.shownValue(ask.word()),
                    "give an object of places and colours");
        }
        Manner manner = request.manner(Ask.A_MINUTE, circumstances.now());
        if (word.isPresent()) {
            requireAuto(word.get());
            return new Outcome(
                    before.without(aim -> aim.ask() == ask).faded(Aim.of(ask), manner), Spoken.automatic("pixels"));
        }
        if (entries.isEmpty()) {
            throw ask.missing();
        }
        return laid(entries, manner, before);
    }

    private void requireAuto(String word) throws RefusedException {
        if (!word.equals(Spoken.AUTO)) {
            throw ask.notValid(word);
        }
    }

    private Outcome laid(Map<String, JsonNode> entries, Manner manner, StandingWishes before) throws RefusedException {
        Map<Aim, Held> lit = new LinkedHashMap<>();
        BitSet laid = new BitSet();
        BitSet back = new BitSet();
        for (Map.Entry<String, JsonNode> entry : entries.entrySet()) {
            String colour = colour(entry);
            String place = places.require(entry.getKey());
            if (colour.equals(Spoken.AUTO)) {
                back.or(places.pixels(place));
            } else {
                Colours.require(place, colour);
                laid.or(places.pixels(place));
                lit.put(new Aim(ask, place), new Held(Setting.of(colour), manner.end()));
            }
        }
        StandingWishes after = before.changed(held -> {
            held.entrySet().removeIf(entry -> isWithin(entry, back));
            held.entrySet().removeIf(entry -> isWithin(entry, laid) && !outlasts(entry.getValue(), manner.end()));
            lit.forEach((aim, colour) -> {
                held.remove(aim);
                held.put(aim, colour);
            });
        });
        requireRoom(after);
        requireBack(back, after, laid);
        return new Outcome(after.faded(Aim.of(ask), manner), said(laid, back, manner));
    }

    private static String colour(Map.Entry<String, JsonNode> entry) throws RefusedException {
        if (!entry.getValue().isTextual()) {
            throw new RefusedException(
                    Reason.NOT_VALID,
                    "pixels " + Request.shown(entry.getKey()),
                    Request.shown(entry.getValue()),
                    "give a colour, for instance \"orange\"");
        }
        return entry.getValue().asText();
    }

    private boolean isWithin(Map.Entry<Aim, Held> entry, BitSet pixels) {
        if (entry.getKey().ask() != ask) {
            return false;
        }
        BitSet own = places.pixels(entry.getKey().name());
        own.andNot(pixels);
        return own.isEmpty();
    }

    /** Whether something shows again once what covers it ends. */
    private boolean outlasts(Held held, End end) {
        return held.end().leftNanos(circumstances.now()) > end.leftNanos(circumstances.now());
    }

    private void requireRoom(StandingWishes after) throws RefusedException {
        if (after.of(ask).size() > MOST_PLACES) {
            throw new RefusedException(Reason.TOO_MANY_PLACES, MOST_PLACES);
        }
    }

    /** What is returned to automatic must not lie under a colour that covers more than it. */
    private void requireBack(BitSet back, StandingWishes after, BitSet laid) throws RefusedException {
        for (Map.Entry<Aim, Held> entry : after.of(ask)) {
            BitSet own = places.pixels(entry.getKey().name());
            own.andNot(laid);
            if (own.intersects(back)) {
                String name = entry.getKey().name();
                throw new RefusedException(
                        Reason.COLOUR_OF_ANOTHER, name, "{\"pixels\": {\"" + name + "\": \"auto\"}}");
            }
        }
    }

    private static String said(BitSet laid, BitSet back, Manner manner) {
        String given = Spoken.automatic(back.cardinality() + " pixels");
        String lit = laid.cardinality() + " pixels" + manner.words();
        if (back.isEmpty()) {
            return lit;
        }
        return laid.isEmpty() ? given : lit + ", " + given;
    }
}
