package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

final class RoundsTest {
    private final Rounds rounds = new Rounds();
    private final Outbox alder = new Outbox();
    private final Outbox birch = new Outbox();

    private static void put(Outbox outbox, String payload, boolean retained) {
        outbox.put(new Outgoing("status", payload.getBytes(StandardCharsets.UTF_8), retained));
    }

    private List<String> takeAll() {
        List<String> all = new ArrayList<>();
        for (Optional<Outgoing> next = rounds.poll(); next.isPresent(); next = rounds.poll()) {
            all.add(new String(next.get().payload(), StandardCharsets.UTF_8));
        }
        return all;
    }

    @Test
    void whoPublishesMuchHoldsUpNobody() {
        rounds.add(alder);
        rounds.add(birch);
        for (int i = 0; i < 3; i++) {
            put(alder, "a" + i, false);
        }
        put(birch, "b", false);
        List<String> all = takeAll();
        assertTrue(all.indexOf("b") <= 1, all::toString);
        assertEquals(
                List.of("a0", "a1", "a2"),
                all.stream().filter(text -> !text.equals("b")).toList());
    }

    @Test
    void nothingIsTakenFromWhoIsNotInAndWhatIsRetainedComesAgainLater() {
        put(alder, "1", true);
        assertEquals(List.of(), takeAll());
        rounds.add(alder);
        assertEquals(List.of("1"), takeAll());
        rounds.remove(alder);
        put(alder, "2", true);
        assertEquals(List.of(), takeAll());
        rounds.add(alder);
        rounds.add(alder);
        assertEquals(List.of("2"), takeAll());
        rounds.again();
        assertEquals(List.of("2"), takeAll());
    }
}
