package dev.lampwright.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.testing.CapturedLog;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Another daemon with the same topics at the broker. */
class NamesakeTest {
    private static final String TOPIC = "lampwright/alder/status";
    private static final Signature OWN = new Signature("shelf", "alder", "a1");

    private final CapturedLog log = new CapturedLog(Namesake.class.getName());
    private final Namesake namesake = new Namesake(OWN);

    @AfterEach
    void close() {
        log.close();
    }

    private void saw(Signature who, boolean online, boolean retained, long second) {
        String status = who.json(online, "0.1.0").text();
        namesake.saw(TOPIC, status.getBytes(StandardCharsets.UTF_8), retained, TimeUnit.SECONDS.toNanos(second));
    }

    private static String told(String where) {
        return "WARN another Lampwright" + where + " reports on " + TOPIC
                + " too: both do what is asked there; stop one of them, or give each its own desk.prefix";
    }

    @Test
    void isLoggedOnceWithItsComputerAndWhatToDo() {
        saw(OWN, true, false, 0);
        saw(new Signature("loft", "alder", "b2"), true, false, 1);
        saw(new Signature("loft", "alder", "b2"), true, false, 6);
        assertEquals(List.of(told(" on loft")), log.lines());
    }

    @Test
    void mayBeOnThisComputer() {
        saw(new Signature("shelf", "alder", "b2"), true, false, 1);
        assertEquals(List.of(told(" on this computer")), log.lines());
    }

    @Test
    void neitherOurselvesNorAnEarlierRunNorAWillIsAnother() {
        saw(OWN, true, false, 0);
        saw(new Signature("shelf", "alder", "b2"), true, true, 1);
        saw(new Signature("shelf", "alder", "b2"), false, false, 2);
        namesake.saw(TOPIC, new byte[] {(byte) 0xff, '{'}, false, 3);
        assertEquals(List.of(), log.lines());
    }

    @Test
    void isLoggedOnceItIsGone() {
        saw(new Signature("loft", "alder", "b2"), true, false, 1);
        namesake.lookAround(TimeUnit.SECONDS.toNanos(20));
        namesake.lookAround(TimeUnit.SECONDS.toNanos(21));
        namesake.lookAround(TimeUnit.SECONDS.toNanos(22));
        assertEquals(List.of(told(" on loft"), "INFO no other Lampwright reports on our topics any more"), log.lines());
    }
}
