package dev.lampwright.tool.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.lampwright.testing.Await;
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
        CompletableFuture<String> answer = new CompletableFuture<>();
        Thread thread = new Thread(() -> {
            try {
                answer.complete(worker.run(tab, patience -> {
                    begun.incrementAndGet();
                    await(go);
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
