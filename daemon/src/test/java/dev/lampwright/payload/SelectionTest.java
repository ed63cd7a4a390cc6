package dev.lampwright.payload;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.testing.Alder;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class SelectionTest {
    private final RecordKeys keys = new RecordKeys();
    private final Speakers speakers = new Speakers();

    private static Optional<String> at(Source source, String payload) throws UnreadableException {
        return new Payload(Alder.bytes(payload)).at(source).flatMap(Value::word);
    }

    private static Source bed(String among) {
        Selection part = new Selection(PayloadPath.at(among), Map.of(PayloadPath.at("/name"), "bed"));
        return new Source("t", PayloadPath.at("/now"), List.of(), Optional.of(part));
    }

    private List<Leaf> leaves(String payload) {
        return Leaves.of("t", Alder.bytes(payload), keys, speakers).list();
    }

    @Test
    void anElementIsFoundWhereverItIs() throws UnreadableException {
        assertEquals(
                Optional.of("41"),
                at(bed("/h"), "{\"h\":[{\"name\":\"bed\",\"now\":41},{\"name\":\"tip\",\"now\":9}]}"));
        assertEquals(
                Optional.of("41"),
                at(bed("/h"), "{\"h\":[{\"name\":\"tip\",\"now\":9},{\"name\":\"bed\",\"now\":41}]}"));
        assertEquals(Optional.of("41"), at(bed(""), "[{\"name\":\"bed\",\"now\":41}]"));
        assertEquals(Optional.empty(), at(bed("/h"), "{\"h\":[{\"name\":\"tip\",\"now\":9}]}"));
        assertEquals(Optional.empty(), at(bed("/h"), "{\"h\":[]}"));
    }

    @Test
    void aMessageAboutAnotherIsNotMeant() throws UnreadableException {
        assertEquals(Optional.of("41"), at(bed(""), "{\"name\":\"bed\",\"now\":41}"));
        assertEquals(Optional.empty(), at(bed(""), "{\"name\":\"tip\",\"now\":9}"));
    }

    /** The naming field is recognised by its effect, whatever it is called; what each leaf says about its place is true. */
    @Test
    void leavesOfAListAreFoundAgainInAnyOrder() throws UnreadableException {
        String one =
                "[{\"tila\":\"päällä\",\"osa\":\"pöytä\",\"t\":41},{\"tila\":\"pois\",\"osa\":\"suutin\",\"t\":200}]";
        String other =
                "[{\"tila\":\"pois\",\"osa\":\"suutin\",\"t\":201},{\"tila\":\"pois\",\"osa\":\"pöytä\",\"t\":42}]";
        leaves(one);
        leaves(other);
        Map<Source, String> first = leaves(one).stream().collect(Collectors.toMap(leaf -> leaf.on("t"), Leaf::text));
        Map<Source, String> second = leaves(other).stream().collect(Collectors.toMap(leaf -> leaf.on("t"), Leaf::text));
        assertEquals(first.keySet(), second.keySet());
        for (Map.Entry<Source, String> entry : second.entrySet()) {
            assertEquals(
                    Optional.of(entry.getValue()),
                    at(entry.getKey(), other),
                    entry.getKey().place());
        }
    }

    /** Two printers take turns on one topic, and only the numbers show that there are two. */
    @Test
    void speakersInTurnsAreToldApart() {
        for (int i = 0; i < 20; i++) {
            leaves("{\"kone\":\"kuusi\",\"t\":" + (200 + i % 3) + "}");
            leaves("{\"kone\":\"mänty\",\"t\":" + (22 + i % 2) + "}");
        }
        assertEquals(
                Optional.of(new Speakers.Turns(PayloadPath.at("/kone"), List.of("kuusi", "mänty"))), speakers.on("t"));
        Leaf leaf = leaves("{\"kone\":\"kuusi\",\"t\":205}").get(1);
        assertEquals("/t where /kone is kuusi", leaf.on("t").place());
        assertEquals(List.of("kuusi", "t"), leaf.names());
    }

    /** A counter and a word that seldom changes are not names. */
    @Test
    void oneSpeakerIsLeftAlone() {
        for (int i = 0; i < 300; i++) {
            leaves("{\"n\":" + i % 11 + ",\"state\":\"" + (i < 100 ? "heat" : "print") + "\",\"t\":" + (200 + i) + "}");
        }
        assertEquals(Optional.empty(), speakers.on("t"));
    }
}
