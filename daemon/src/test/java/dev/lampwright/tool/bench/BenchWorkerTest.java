package dev.lampwright.tool.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.lampwright.testing.Await;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class BenchWorkerTest {
    private final CountDownLatch go = new CountDownLatch(1);
    private final AtomicInteger begun = new AtomicInteger();

    private CompletableFuture<String> ask(BenchWorker worker, String tab, String what) {
        return ask(worker, tab, what, go);
    }

    private CompletableFuture<String> ask(BenchWorker worker, String tab, String what, CountDownLatch latch) {
        CompletableFuture<String> answer = new CompletableFuture<>();
        Thread thread = new Thread(() -> {
            try {
                answer.complete(worker.run(tab, patience -> {
                    begun.incrementAndGet();
                    await(latch);
                    patience.check();
                    return what;
                }));
            } catch (BenchRefusal e) {
                answer.complete((String) e.reply().body().get("code"));
            }
        });
        thread.start();
        Await.until("it waits", () -> answer.isDone() || thread.getState() == Thread.State.TIMED_WAITING);
        return answer;
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void fourWaitAndTheFifthIsTurnedAway() throws ExecutionException, InterruptedException {
        try (BenchWorker worker = new BenchWorker()) {
            List<CompletableFuture<String>> answers = new ArrayList<>();
            for (int i = 0; i < BenchWorker.MOST; i++) {
                answers.add(ask(worker, "tab" + i, "drawn " + i));
            }
            assertEquals("busy", ask(worker, "tab9", "").get());
            assertEquals(1, begun.get(), "one at a time");
            go.countDown();
            for (int i = 0; i < BenchWorker.MOST; i++) {
                assertEquals("drawn " + i, answers.get(i).get());
            }
            assertEquals("drawn again", ask(worker, "tab9", "drawn again").get());
        }
    }

    @Test
    void theNewestOfATabTakesThePlaceOfItsOlder() throws ExecutionException, InterruptedException {
        try (BenchWorker worker = new BenchWorker()) {
            CompletableFuture<String> drawing = ask(worker, "mine", "first");
            CompletableFuture<String> waiting = ask(worker, "mine", "second");
            CompletableFuture<String> other = ask(worker, "other", "other");
            CompletableFuture<String> newest = ask(worker, "mine", "third");
            go.countDown();
            assertEquals("newer", drawing.get());
            assertEquals("newer", waiting.get());
            assertEquals("other", other.get());
            assertEquals("third", newest.get());
        }
    }

    @Test
    void whoWaitsForWhatIsNotWantedAnyMoreIsAnsweredAtOnce() throws ExecutionException, InterruptedException {
        try (BenchWorker worker = new BenchWorker()) {
            CompletableFuture<String> other = ask(worker, "other", "other");
            CompletableFuture<String> waiting = ask(worker, "mine", "0");
            for (int i = 1; i <= 20; i++) {
                CompletableFuture<String> newer = ask(worker, "mine", "" + i);
                assertEquals("newer", waiting.get(), "while another is being drawn");
                waiting = newer;
            }
            go.countDown();
            assertEquals("other", other.get());
            assertEquals("20", waiting.get());
        }
    }

    @Test
    void whatTakesTooLongIsEndedAndNotOnlyItsAnswer() throws ExecutionException, InterruptedException {
        CountDownLatch ended = new CountDownLatch(1);
        try (BenchWorker worker = new BenchWorker(Duration.ofMillis(20), Duration.ofSeconds(30))) {
            BenchRefusal refusal = assertThrows(
                    BenchRefusal.class,
                    () -> worker.run("", patience -> {
                        try {
                            while (true) {
                                patience.check();
                            }
                        } finally {
                            ended.countDown();
                        }
                    }));
            assertEquals("too_slow", refusal.code());
            assertEquals(0, ended.getCount());
        }
        CountDownLatch left = new CountDownLatch(1);
        try (BenchWorker worker = new BenchWorker(Duration.ofDays(1), Duration.ofMillis(20))) {
            BenchRefusal refusal = assertThrows(
                    BenchRefusal.class,
                    () -> worker.run("", patience -> {
                        try {
                            while (true) {
                                patience.progress().drawn();
                            }
                        } finally {
                            left.countDown();
                        }
                    }));
            assertEquals("too_slow", refusal.code());
            left.await();
            assertEquals("next", ask(worker, "", "next", new CountDownLatch(0)).get());
        }
    }

    @Test
    void savesTakeTurnsAndFewWait() throws BenchRefusal, ExecutionException, InterruptedException {
        SaveTurn turn = new SaveTurn();
        List<CompletableFuture<Integer>> saves = new ArrayList<>();
        for (int i = 0; i <= SaveTurn.MOST_WAITING; i++) {
            CompletableFuture<Integer> save = new CompletableFuture<>();
            saves.add(save);
            Thread thread = new Thread(() -> {
                try {
                    save.complete(turn.take(() -> {
                        await(go);
                        return begun.incrementAndGet();
                    }));
                } catch (BenchRefusal e) {
                    save.completeExceptionally(e);
                }
            });
            thread.start();
            Await.until(
                    "it waits",
                    () -> thread.getState() == Thread.State.WAITING || thread.getState() == Thread.State.TIMED_WAITING);
        }
        BenchRefusal refusal = assertThrows(BenchRefusal.class, () -> turn.take(() -> 0));
        assertEquals("busy", refusal.code());
        assertEquals(503, refusal.reply().status());
        go.countDown();
        for (int i = 0; i < saves.size(); i++) {
            assertEquals(i + 1, saves.get(i).get());
        }
        assertEquals(9, turn.take(() -> 9));
    }

    @Test
    void soManyRequestsWaitAndNoMore() throws ExecutionException, InterruptedException {
        try (BenchWorker worker = new BenchWorker()) {
            List<CompletableFuture<Integer>> answers = new ArrayList<>();
            for (int i = 0; i < BenchWorker.MOST_REQUESTS; i++) {
                CompletableFuture<Integer> answer = new CompletableFuture<>();
                answers.add(answer);
                Thread thread = new Thread(() -> {
                    try {
                        answer.complete(worker.answer(() -> {
                            await(go);
                            return 200;
                        }));
                    } catch (BenchRefusal e) {
                        answer.complete(e.reply().status());
                    }
                });
                thread.start();
                Await.until("it waits", () -> thread.getState() == Thread.State.WAITING);
            }
            BenchRefusal refusal = assertThrows(BenchRefusal.class, () -> worker.answer(() -> 0));
            assertEquals(503, refusal.reply().status());
            go.countDown();
            for (CompletableFuture<Integer> answer : answers) {
                assertEquals(200, answer.get());
            }
        }
    }

    @Test
    void whatFailsIsNoAnswer() {
        try (BenchWorker worker = new BenchWorker()) {
            assertThrows(
                    IllegalStateException.class,
                    () -> worker.run("", patience -> {
                        throw new IllegalArgumentException("a defect");
                    }));
        }
    }
}
