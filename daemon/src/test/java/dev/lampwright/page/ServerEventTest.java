package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.page.EventReader.Event;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Source of what is right: WHATWG HTML Standard, 9.2, as implemented in {@link EventReader}. */
class ServerEventTest {
    @Test
    void anEventHasItsTypeAndItsData() {
        EventReader read = EventReader.of(ServerEvent.of("frame", "{\"a\": 1}"));
        assertEquals(List.of(new Event("frame", "{\"a\": 1}", "")), read.events());
    }

    @Test
    void linesOfDataStayLinesHoweverTheyEnd() {
        EventReader read = EventReader.of(ServerEvent.of("note", "one\ntwo\r\nthree\rfour\n"));
        assertEquals(List.of(new Event("note", "one\ntwo\nthree\nfour\n", "")), read.events());
    }

    @Test
    void noDataCanEndAnEventOrBeginAField() {
        String data = "x\n\nevent: other\nid: 7\n\nretry: 1";
        assertEquals(
                List.of(new Event("note", data, "")),
                EventReader.of(ServerEvent.of("note", data)).events());
    }

    @Test
    void anIdIsKeptForTheEventsThatFollow() throws IOException {
        ByteArrayOutputStream stream = new ByteArrayOutputStream();
        stream.write(ServerEvent.of("current", "r-7", "1"));
        stream.write(ServerEvent.of("frame", "2"));
        assertEquals(
                List.of(new Event("current", "1", "r-7"), new Event("frame", "2", "r-7")),
                EventReader.of(stream.toByteArray()).events());
    }

    @Test
    void aPauseIsToldAndIsNoEvent() {
        EventReader read = EventReader.of(ServerEvent.retryAfter(2000));
        assertEquals(2000, read.retryMillis());
        assertEquals(List.of(), read.events());
    }

    @Test
    void aLineThatSaysNothingIsNoEvent() throws IOException {
        ByteArrayOutputStream stream = new ByteArrayOutputStream();
        stream.write(ServerEvent.NOTHING);
        stream.write(ServerEvent.of("frame", "1"));
        stream.write(ServerEvent.NOTHING);
        assertEquals(
                List.of(new Event("frame", "1", "")),
                EventReader.of(stream.toByteArray()).events());
    }

    @Test
    void whateverIsSaidIsHeard() throws IOException {
        Random random = new Random(20);
        ByteArrayOutputStream stream = new ByteArrayOutputStream();
        List<Event> said = new ArrayList<>();
        for (int i = 0; i < 500; i++) {
            String text = anyText(random);
            stream.write(ServerEvent.of("note", text));
            said.add(new Event("note", text.replaceAll("\r\n?", "\n"), ""));
        }
        assertEquals(said, EventReader.of(stream.toByteArray()).events());
    }

    private static String anyText(Random random) {
        String signs = "ab :\n\r\t\u00e9\u20ac\u2028\ud83d\ude00\ufeff";
        int[] points = signs.codePoints().toArray();
        StringBuilder text = new StringBuilder("x");
        for (int i = random.nextInt(20); i > 0; i--) {
            text.appendCodePoint(points[random.nextInt(points.length)]);
        }
        return new String(text.toString().getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8);
    }
}
