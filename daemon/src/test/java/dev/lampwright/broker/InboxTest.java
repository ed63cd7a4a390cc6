package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
final class InboxTest {
    private final Inbox inbox = new Inbox();
    private int inside;

    private void put(String topic, String payload) {
        inbox.put(new HeardMessage(topic, payload.getBytes(StandardCharsets.UTF_8), false));
        inside++;
    }

    private List<String> takeAll() throws InterruptedException {
        List<String> all = new ArrayList<>();
        for (long left = inside - inbox.lost(); left > 0; left--) {
            HeardMessage message = inbox.take().orElseThrow();
            inside--;
            all.add(message.topic() + " " + new String(message.payload(), StandardCharsets.UTF_8));
        }
        return all;
    }

    /** A fault may be published only once, and something else on the same topic at once behind it. */
    @Test
    void allAreReadInTheirOrderWhileThereIsRoom() throws InterruptedException {
        IntStream.range(0, Inbox.MOST).forEach(i -> put("job", "" + i));
        assertEquals(IntStream.range(0, Inbox.MOST).mapToObj(i -> "job " + i).toList(), takeAll());
        assertEquals(0, inbox.lost());
    }

    @Test
    void aFloodLosesItsOwnOldestAndNothingOfOthers() throws InterruptedException {
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
    void ofMoreTopicsThanThereIsRoomForTheOldestGo() throws InterruptedException {
        IntStream.range(0, Inbox.MOST + 2).forEach(i -> put("t" + i, ""));
        assertEquals("t2 ", takeAll().get(0));
    }

    @Test
    void itsBytesAreLimitedButTheNewestIsAlwaysThere() throws InterruptedException {
        String large = "x".repeat(Inbox.MOST_BYTES / 4);
        IntStream.range(0, 20).forEach(i -> put("t" + i, large));
        assertEquals(16, inbox.lost());
        takeAll();
        put("huge", large.repeat(8));
        assertEquals(1, takeAll().size());
    }

    @Test
    void whoeverWaitsIsWokenByAMessageAndByTheEnd() throws Exception {
        CompletableFuture<Optional<HeardMessage>> first = CompletableFuture.supplyAsync(this::take);
        put("job", "RUN");
        assertEquals("job", first.get(20, TimeUnit.SECONDS).orElseThrow().topic());
        CompletableFuture<Optional<HeardMessage>> second = CompletableFuture.supplyAsync(this::take);
        inbox.shut();
        assertTrue(second.get(20, TimeUnit.SECONDS).isEmpty());
        put("job", "late");
        assertTrue(inbox.take().isEmpty());
    }

    private Optional<HeardMessage> take() {
        try {
            return inbox.take();
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
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
