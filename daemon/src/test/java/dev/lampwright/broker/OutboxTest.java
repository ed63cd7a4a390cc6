package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class OutboxTest {
    private final Outbox outbox = new Outbox();

    private void put(String topic, String payload, boolean retained) {
        outbox.put(new Outgoing(topic, payload.getBytes(StandardCharsets.UTF_8), retained));
    }

    private List<String> takeAll() {
        List<String> all = new ArrayList<>();
        for (Optional<Outgoing> next = outbox.poll(); next.isPresent(); next = outbox.poll()) {
            all.add(new String(next.get().payload(), StandardCharsets.UTF_8));
        }
        return all;
    }

    @Test
    void retainedMessagesGiveWayToTheNewestOfTheirTopic() {
        put("status", "1", true);
        put("other", "2", true);
        put("status", "3", true);
        assertEquals(List.of("3", "2"), takeAll());
    }

    @Test
    void othersComeOnceAndInOrder() {
        put("answer", "1", false);
        put("answer", "2", false);
        put("answer", "1", false);
        assertEquals(List.of("1", "2", "1"), takeAll());
        outbox.again();
        assertEquals(List.of(), takeAll());
    }

    @Test
    void theNewestRetainedOfEachTopicComeAgain() {
        put("status", "1", true);
        put("status", "2", true);
        assertEquals(List.of("2"), takeAll());
        outbox.again();
        assertEquals(List.of("2"), takeAll());
    }

    @Test
    void comingAgainAddsNothingToWhatWaits() {
        put("status", "1", true);
        outbox.again();
        outbox.again();
        assertEquals(List.of("1"), takeAll());
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void theOldestGoWhenTooManyWait(boolean retained) {
        IntStream.range(0, 1000).forEach(i -> put("topic " + i, "" + i, retained));
        List<String> newest = IntStream.range(1000 - Outbox.MOST, 1000)
                .mapToObj(Integer::toString)
                .toList();
        assertEquals(newest, takeAll());
        outbox.again();
        assertEquals(retained ? newest : List.of(), takeAll());
    }

    @Test
    void takesNothingOnceShut() {
        put("status", "1", true);
        outbox.shut();
        put("status", "2", true);
        assertEquals(List.of("1"), takeAll());
    }

    /** It would wait for an hour otherwise. */
    @Test
    @Timeout(60)
    void aMessageEndsTheWaitEvenIfItCameBefore() throws InterruptedException {
        put("status", "1", true);
        put("status", "2", true);
        outbox.bell().await(Duration.ofHours(1));
        assertEquals(List.of("2"), takeAll());
    }

    @Test
    void keepsACopy() {
        byte[] payload = {1, 2};
        outbox.put(new Outgoing("status", payload, true));
        payload[0] = 9;
        assertArrayEquals(new byte[] {1, 2}, outbox.poll().orElseThrow().payload());
    }

    /** MQTT 3.1.1, sections 3.3.2.1 and 4.7.3. */
    @ParameterizedTest
    @ValueSource(strings = {"", "a/#", "+/a", "a+", "nul\0"})
    void wildcardsAndNoTopicAtAllAreRefused(String topic) {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> new Outgoing(topic, new byte[0], true))
                .getMessage()
                .startsWith("a topic"));
    }
}
