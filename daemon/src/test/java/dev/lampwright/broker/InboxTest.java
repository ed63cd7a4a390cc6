package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
final class InboxTest {
    private final Inbox inbox = new Inbox(() -> {});
    private int inside;

    private void put(String topic, String payload) {
        inbox.put(new HeardMessage(topic, payload.getBytes(StandardCharsets.UTF_8), false));
        inside++;
    }

    private List<String> takeAll() {
        List<String> all = new ArrayList<>();
        for (long left = inside - inbox.lost(); left > 0; left--) {
            HeardMessage message = inbox.poll().orElseThrow();
            inside--;
            all.add(message.topic() + " " + new String(message.payload(), StandardCharsets.UTF_8));
        }
        return all;
    }

    /** A fault may be published only once, and something else on the same topic at once behind it. */
    @Test
    void allAreReadInTheirOrderWhileThereIsRoom() {
        IntStream.range(0, Inbox.MOST).forEach(i -> put("job", "" + i));
        assertEquals(IntStream.range(0, Inbox.MOST).mapToObj(i -> "job " + i).toList(), takeAll());
        assertEquals(0, inbox.lost());
    }

    @Test
    void aFloodLosesItsOwnOldestAndNothingOfOthers() {
        put("door", "OPEN");
        IntStream.range(0, 10_000).forEach(i -> put("job", "" + i));
        put("heat", "60");
        assertEquals(10_002 - Inbox.MOST, inbox.lost());
        List<String> left = takeAll();
        assertEquals(Inbox.MOST, left.size());
        assertEquals("door OPEN", left.get(0));
        assertEquals("job 9999", left.get(Inbox.MOST - 2));
        assertEquals("heat 60", left.get(Inbox.MOST - 1));
    }

    @Test
    void ofMoreTopicsThanThereIsRoomForTheOldestGo() {
        IntStream.range(0, Inbox.MOST + 2).forEach(i -> put("t" + i, ""));
        assertEquals("t2 ", takeAll().get(0));
    }

    @Test
    void itsBytesAreLimitedButTheNewestIsAlwaysThere() {
        String large = "x".repeat(Inbox.MOST_BYTES / 4);
        IntStream.range(0, 20).forEach(i -> put("t" + i, large));
        assertEquals(16, inbox.lost());
        takeAll();
        put("huge", large.repeat(8));
        assertEquals(1, takeAll().size());
    }

    @Test
    void newsIsPassedOnUntilItIsShut() {
        AtomicInteger told = new AtomicInteger();
        Inbox read = new Inbox(told::incrementAndGet);
        assertTrue(read.poll().isEmpty());
        read.put(new HeardMessage("job", new byte[0], false));
        assertEquals(1, told.get());
        assertEquals("job", read.poll().orElseThrow().topic());
        read.put(new HeardMessage("job", new byte[0], false));
        read.shut();
        assertTrue(read.poll().isEmpty());
        read.put(new HeardMessage("job", new byte[0], false));
        assertTrue(read.poll().isEmpty());
        assertEquals(2, told.get());
    }

    /** However many messages somebody stuck has in an inbox, few of them are kept as they were read. */
    @Test
    void onlyTheNewestAreKeptOpen() {
        Function<byte[], Object> open = bytes -> new Object();
        SharedConnection.KeptOpen kept = new SharedConnection.KeptOpen();
        List<HeardMessage> messages = IntStream.range(0, 3)
                .mapToObj(i -> new HeardMessage("t", new byte[SharedConnection.KeptOpen.MOST_BYTES / 2], false))
                .toList();
        List<Object> opened = new ArrayList<>();
        for (HeardMessage message : messages) {
            kept.add(message);
            opened.add(message.opened(open));
        }
        assertSame(opened.get(2), messages.get(2).opened(open));
        assertSame(opened.get(1), messages.get(1).opened(open));
        assertNotSame(opened.get(0), messages.get(0).opened(open));
        assertNotSame(messages.get(0).opened(open), messages.get(0).opened(open), "it is not kept again");
    }
}
