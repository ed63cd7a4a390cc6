package dev.lampwright.tool.bench;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * The one thread that draws for benches, however many rigs and browsers there are, so that at most one processor is busy with it and none of
 * the threads that serve pages. A newer task of a browser's tab takes the place of an older one.
 */
public final class BenchWorker implements AutoCloseable {
    /** The most tasks that wait or are done. */
    static final int MOST = 4;

    private static final long IDLE_S = 10;
    private static final long LONGEST_S = 60;

    private final Deque<Task> tasks = new ArrayDeque<>();
    private final ExecutorService thread;

    /** Makes one whose thread begins with the first task, and ends when there has been none for a while. */
    public BenchWorker() {
        thread = new ThreadPoolExecutor(0, 1, IDLE_S, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), task -> {
            Thread bench = new Thread(task, "bench");
            bench.setDaemon(true);
            return bench;
        });
    }

    /** Something to draw. */
    interface Work<T> {
        T draw(LookFilm.Patience patience) throws BenchRefusal;
    }

    /** One task of a tab. */
    private static final class Task {
        private final String tab;
        private volatile boolean superseded;

        Task(String tab) {
            this.tab = tab;
        }

        void check() throws BenchRefusal {
            if (superseded) {
                throw new BenchRefusal(409, "newer", "a newer request took the place of this one");
            }
        }
    }

    /**
     * Has something drawn, and waits for it.
     *
     * @param tab whose newer tasks take the place of its older ones; empty for one by itself
     * @param work what to draw
     * @param <T> what comes of it
     * @return what came of it
     * @throws BenchRefusal if there are too many tasks, a newer one came, or the work says so
     */
    <T> T run(String tab, Work<T> work) throws BenchRefusal {
        Task task = enter(tab);
        try {
            return await(CompletableFuture.supplyAsync(() -> done(task, work), thread));
        } finally {
            leave(task);
        }
    }

    private synchronized Task enter(String tab) throws BenchRefusal {
        tasks.stream().filter(task -> !tab.isEmpty() && task.tab.equals(tab)).forEach(task -> task.superseded = true);
        if (tasks.stream().filter(task -> !task.superseded).count() >= MOST || tasks.size() >= 2 * MOST) {
            throw new BenchRefusal(503, "busy", "the bench has enough to draw; try again in a second");
        }
        Task task = new Task(tab);
        tasks.add(task);
        return task;
    }

    private synchronized void leave(Task task) {
        tasks.remove(task);
    }

    /** What came of a task, or why nothing did. */
    private record Outcome<T>(T made, BenchRefusal refusal) {}

    private static <T> Outcome<T> done(Task task, Work<T> work) {
        try {
            task.check();
            return new Outcome<>(work.draw(task::check), null);
        } catch (BenchRefusal e) {
            return new Outcome<>(null, e);
        }
    }

    private static <T> T await(CompletableFuture<Outcome<T>> future) throws BenchRefusal {
        try {
            Outcome<T> outcome = future.get(LONGEST_S, TimeUnit.SECONDS);
            if (outcome.refusal() != null) {
                throw outcome.refusal();
            }
            return outcome.made();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new BenchRefusal(503, "busy", "the page is closing");
        } catch (TimeoutException e) {
            throw new BenchRefusal(503, "busy", "drawing took too long; try again");
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        }
    }

    /** Ends the thread. Who waits hears that the page is closing. */
    @Override
    public void close() {
        thread.shutdownNow();
    }
}
