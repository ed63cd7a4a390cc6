package dev.lampwright.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import dev.lampwright.testing.LogLines;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
final class WorkerTest {
    private static final String COMPLAINT = "worker under test: internal error (please report it)";
    private static final String NAME = "worker under test";
    private static final Duration SHORT = Duration.ofMillis(1);
    private static final Duration FOR_EVER = Duration.ofDays(1);

    private final LogLines log = new LogLines();
    private final AtomicInteger steps = new AtomicInteger();

    @AfterEach
    void stopListening() {
        log.close();
    }

    private void awaitSteps(int count) {
        Await.until(count + " steps", () -> steps.get() >= count);
    }

    @Test
    void doesItsStepAgainAndAgainOnADaemonThreadOfItsName() {
        AtomicReference<Thread> on = new AtomicReference<>();
        try (Worker worker = new Worker(NAME, SHORT, () -> {
            on.set(Thread.currentThread());
            steps.incrementAndGet();
        })) {
            assertFalse(worker.isAlive());
            worker.start();
            awaitSteps(3);
            assertTrue(worker.isAlive());
            assertEquals(NAME, on.get().getName());
            assertTrue(on.get().isDaemon());
            assertTrue(worker.end(Duration.ofSeconds(10)));
            assertFalse(worker.isAlive());
            int done = steps.get();
            assertTrue(worker.end(Duration.ZERO));
            assertEquals(done, steps.get());
        }
    }

    @Test
    void doesTheFirstStepAtOnceAndEndsInALongPause() {
        Worker worker = new Worker(NAME, FOR_EVER, steps::incrementAndGet);
        worker.start();
        awaitSteps(1);
        assertTrue(worker.end(Duration.ofSeconds(20)));
        assertEquals(1, steps.get());
    }

    @Test
    void aStepMaySayHowLongToPause() {
        Worker worker = Worker.paced(
                NAME,
                FOR_EVER,
                () -> steps.incrementAndGet() < 3 ? -1 : Duration.ofDays(1).toNanos());
        worker.start();
        awaitSteps(3);
        assertTrue(worker.end(Duration.ofSeconds(20)));
        assertEquals(3, steps.get());
    }

    @Test
    void aFailureIsLoggedOnceAndTheNextOnlyAfterAStepThatWentWell() {
        List<String> told = new CopyOnWriteArrayList<>();
        try (Worker worker = new Worker(NAME, SHORT, () -> {
            int now = steps.incrementAndGet();
            told.add(now + " " + log.with(COMPLAINT).size());
            if (now == 5 || now >= 8) {
                return;
            }
            if (now % 2 == 0) {
                throw new IllegalStateException("wind");
            }
            throw new AssertionError("rain");
        })) {
            worker.start();
            awaitSteps(8);
        }
        assertEquals(List.of("1 0", "2 1", "3 1", "4 1", "5 1", "6 1", "7 2", "8 2"), told.subList(0, 8));
        assertTrue(
                log.with(COMPLAINT).get(0).startsWith("ERROR"),
                log.with(COMPLAINT).toString());
    }

    @Test
    void pausesAfterAFailure() {
        Worker worker = Worker.paced(NAME, FOR_EVER, () -> {
            steps.incrementAndGet();
            throw new IllegalStateException("wind");
        });
        worker.start();
        Await.until("the complaint", () -> log.with(COMPLAINT).size() == 1);
        assertTrue(worker.end(Duration.ofSeconds(20)));
        assertEquals(1, steps.get());
    }

    @Test
    void theLastThingIsDoneOnceOnTheSameThreadEvenAfterAFailure() {
        List<String> done = new CopyOnWriteArrayList<>();
        try (Worker worker = new Worker(
                NAME,
                FOR_EVER,
                () -> {
                    steps.incrementAndGet();
                    throw new IllegalStateException("wind");
                },
                () -> done.add(Thread.currentThread().getName()))) {
            worker.start();
            awaitSteps(1);
            assertEquals(List.of(), done);
        }
        assertEquals(List.of(NAME), done);
    }

    @Test
    void waitsForAStepThatIsUnderWayButNotForEver() {
        CountDownLatch stuck = new CountDownLatch(1);
        Worker worker = new Worker(NAME, SHORT, () -> {
            steps.incrementAndGet();
            awaitUninterrupted(stuck);
        });
        worker.start();
        awaitSteps(1);
        assertFalse(worker.end(Duration.ofMillis(20)));
        assertTrue(worker.isAlive());
        stuck.countDown();
        assertTrue(worker.end(Duration.ofSeconds(20)));
        assertEquals(1, steps.get());
    }

    @Test
    void anInterruptOfWhoeverEndsItIsKeptAndDoesNotShortenTheWait() {
        AtomicBoolean lastDone = new AtomicBoolean();
        Thread whoEnds = Thread.currentThread();
        Worker worker = new Worker(NAME, FOR_EVER, steps::incrementAndGet, () -> {
            Await.until("the wait for the end", () -> whoEnds.getState() == Thread.State.TIMED_WAITING);
            lastDone.set(true);
        });
        worker.start();
        awaitSteps(1);
        Thread.currentThread().interrupt();
        assertTrue(worker.end(Duration.ofSeconds(20)));
        assertTrue(Thread.interrupted());
        assertTrue(lastDone.get());
    }

    @Test
    void anInterruptOfItsThreadEndsIt() {
        AtomicReference<Thread> on = new AtomicReference<>();
        Worker worker = new Worker(NAME, FOR_EVER, () -> on.set(Thread.currentThread()), steps::incrementAndGet);
        worker.start();
        Await.until("the step", () -> on.get() != null);
        on.get().interrupt();
        awaitSteps(1);
        Await.until("the end", () -> !worker.isAlive());
    }

    @Test
    void aStepMayEndItsOwnWorker() {
        AtomicReference<Worker> own = new AtomicReference<>();
        Worker worker = new Worker(NAME, SHORT, () -> {
            steps.incrementAndGet();
            own.get().close();
        });
        own.set(worker);
        worker.start();
        awaitSteps(1);
        Await.until("the end", () -> !worker.isAlive());
        assertEquals(1, steps.get());
    }

    @Test
    void oneThatWasNeverStartedEndsAtOnce() {
        Worker worker = new Worker(NAME, SHORT, steps::incrementAndGet);
        assertTrue(worker.end(Duration.ofDays(1)));
        assertEquals(0, steps.get());
    }

    private static void awaitUninterrupted(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
