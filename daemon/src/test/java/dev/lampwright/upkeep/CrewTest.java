package dev.lampwright.upkeep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Await;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
final class CrewTest {
    private static final Duration SHORT = Duration.ofMillis(1);
    private static final Duration FOR_EVER = Duration.ofDays(1);
    private static final Duration LONG = Duration.ofSeconds(20);

    private final Crew crew = new Crew();
    private final AtomicInteger steps = new AtomicInteger();

    @AfterEach
    void end() {
        crew.close();
    }

    private Worker worker(Duration pause, Runnable step, Runnable last) {
        return new Worker(crew, "work", pause, step, last);
    }

    @Test
    void manyWorkersNeedFewThreadsAndEachWorksForItsRig() {
        Set<String> seen = ConcurrentHashMap.newKeySet();
        Set<Thread> threads = ConcurrentHashMap.newKeySet();
        List<Worker> workers = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            String rig = "r" + i;
            RigName.during(
                    rig,
                    () -> workers.add(worker(
                            SHORT,
                            () -> {
                                seen.add(rig + RigName.current());
                                threads.add(Thread.currentThread());
                            },
                            steps::incrementAndGet)));
        }
        workers.forEach(Worker::start);
        Await.until("all have worked", () -> seen.size() == 100);
        workers.forEach(worker -> assertTrue(worker.end(LONG)));
        assertEquals(100, steps.get(), "each has done its last step");
        assertTrue(
                seen.containsAll(
                        IntStream.range(0, 100).mapToObj(i -> "r" + i + "r" + i).toList()),
                seen::toString);
        assertTrue(threads.size() < 50, () -> threads.size() + " threads");
        threads.forEach(thread -> assertTrue(thread.isDaemon()));
    }

    @Test
    void whateverIsStuckHoldsUpNothingElse() {
        CountDownLatch freed = new CountDownLatch(1);
        AtomicInteger stuck = new AtomicInteger();
        List<Worker> workers = new ArrayList<>();
        for (int i = 0; i < 3 * Crew.USUAL; i++) {
            workers.add(worker(
                    FOR_EVER,
                    () -> {
                        stuck.incrementAndGet();
                        await(freed);
                    },
                    () -> {}));
        }
        workers.forEach(Worker::start);
        Worker well = worker(SHORT, steps::incrementAndGet, () -> {});
        well.start();
        Await.until("all are stuck", () -> stuck.get() == workers.size());
        int before = steps.get();
        Await.until("the other goes on", () -> steps.get() > before + 3);
        assertFalse(workers.get(0).end(Duration.ofMillis(20)));
        freed.countDown();
        workers.forEach(worker -> assertTrue(worker.end(LONG)));
        assertTrue(well.end(LONG));
    }

    @Test
    void anEndDoesNotWaitForAPauseAndAStepMayEndItsOwnWorker() {
        Worker paused = worker(FOR_EVER, steps::incrementAndGet, () -> steps.addAndGet(10));
        paused.start();
        Await.until("its step", () -> steps.get() == 1);
        assertTrue(paused.isAlive());
        assertTrue(paused.end(LONG));
        assertEquals(11, steps.get());
        assertFalse(paused.isAlive());
        AtomicReference<Worker> own = new AtomicReference<>();
        own.set(worker(SHORT, () -> own.get().close(), () -> steps.addAndGet(100)));
        own.get().start();
        Await.until("its end", () -> !own.get().isAlive());
        assertEquals(111, steps.get());
    }

    /** Whoever adds work while a step is just finding out that there is none must not be overlooked. */
    @Test
    void aJobThatIsHurriedRunsAgainAndOneStepAtATime() {
        AtomicInteger waiting = new AtomicInteger();
        AtomicInteger inside = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        Hands.Job job = crew.take(
                "job",
                () -> {
                    most.accumulateAndGet(inside.incrementAndGet(), Math::max);
                    steps.addAndGet(waiting.getAndSet(0));
                    inside.decrementAndGet();
                    return Hands.UNTIL_HURRIED;
                },
                () -> {});
        job.hurry();
        assertFalse(job.isAlive(), "it has not been started");
        job.start();
        IntStream.range(0, 4).parallel().forEach(thread -> {
            for (int i = 0; i < 1000; i++) {
                waiting.incrementAndGet();
                job.hurry();
            }
        });
        Await.until("all is done", () -> steps.get() == 4000);
        assertEquals(1, most.get());
        assertFalse(job.isCurrent());
    }

    @Test
    void aJobWhoseStepFailsIsOver() {
        Hands.Job job = crew.take(
                "job",
                () -> {
                    throw new IllegalStateException("a step that fails");
                },
                () -> {});
        job.start();
        Await.until("its end", () -> !job.isAlive());
        assertFalse(job.isCurrent());
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
