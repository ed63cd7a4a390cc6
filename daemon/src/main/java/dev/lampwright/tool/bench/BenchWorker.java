package dev.lampwright.tool.bench;

import dev.lampwright.tool.check.CheckMemory;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.Semaphore;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * The one thread that draws for benches, however many rigs and browsers there are, so that at most one processor is busy with it and few of
 * the threads that serve pages wait for it. A newer task of a browser's tab replaces an older one, which is answered at once, and a task
 * that takes too long ends. Also holds what the benches of a process share.
 */
public final class BenchWorker implements AutoCloseable {
    /** The most tasks that wait or are done. */
    static final int MOST = 4;
    /** The most requests that wait for anything; the page's server has eight threads besides those of viewers. */
    static final int MOST_REQUESTS = 6;

    private static final long IDLE_S = 10;
    /** What a drawing may take; our own choice, less than what a person waits for. */
    private static final Duration LONGEST_DRAWING = Duration.ofSeconds(20);
    /** How long a request waits for its turn and its drawing. */
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(45);

    private final Duration longestDrawing;
    private final Duration longestWait;
    private final List<Task<?>> tasks = new ArrayList<>();
    private final ThreadPoolExecutor thread;
    private final Semaphore requests = new Semaphore(MOST_REQUESTS);
    private final SaveTurn saves = new SaveTurn();
    private final SaveTurn drafts = new SaveTurn();
    private final CheckMemory memory = new CheckMemory();

    /** Makes one whose thread begins with the first task, and ends when there has been none for a while. */
    public BenchWorker() {
        this(LONGEST_DRAWING, LONGEST_WAIT);
    }

    /** Makes one with other limits. */
    BenchWorker(Duration longestDrawing, Duration longestWait) {
        this.longestDrawing = longestDrawing;
        this.longestWait = longestWait;
        thread = new ThreadPoolExecutor(0, 1, IDLE_S, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), task -> {
            Thread bench = new Thread(task, "bench");
            bench.setDaemon(true);
            return bench;
        });
    }

    /** Something to draw. */
    interface Work<T> {
        T draw(DrawPatience patience) throws BenchRefusal;
    }

    /** One task of a tab. Its answer is there before it is drawn if nobody waits for it any more. */
    private static final class Task<T> implements Runnable, DrawPatience {
        private final String tab;
        private final Work<T> work;
        private final Duration longest;
        private final CompletableFuture<T> answer = new CompletableFuture<>();
        private long beganNanos;

        Task(String tab, Work<T> work, Duration longest) {
            this.tab = tab;
            this.work = work;
            this.longest = longest;
        }

        @Override
        public void run() {
            beganNanos = System.nanoTime();
            try {
                check();
                answer.complete(work.draw(this));
            } catch (BenchRefusal e) {
                answer.completeExceptionally(e);
            } catch (Ended e) {
                answer.completeExceptionally(e.why());
            } catch (RuntimeException | StackOverflowError e) {
                answer.completeExceptionally(e);
            }
        }

        @Override
        public void check() throws BenchRefusal {
            if (answer.isDone() || Thread.currentThread().isInterrupted()) {
                throw BenchRefusal.closing();
            }
            if (System.nanoTime() - beganNanos > longest.toNanos()) {
                throw tooSlow();
            }
        }
    }

    /**
     * Answers a request that may have to wait.
     *
     * @param request what to do
     * @param <T> what comes of it
     * @return what came of it
     * @throws BenchRefusal if too many wait already, or the request says so
     */
    <T> T answer(SaveTurn.Work<T> request) throws BenchRefusal {
        if (!requests.tryAcquire()) {
            throw busy();
        }
        try {
            return request.run();
        } finally {
            requests.release();
        }
    }

    private static BenchRefusal busy() {
        return new BenchRefusal(503, "busy", "the bench has enough to draw; try again in a second");
    }

    /** Lets one save after another write. */
    SaveTurn saves() {
        return saves;
    }

    /** Lets one draft after another be written. */
    SaveTurn drafts() {
        return drafts;
    }

    /** The results of looks that were checked before. */
    CheckMemory memory() {
        return memory;
    }

    /**
     * Has something drawn, and waits for it.
     *
     * @param tab whose newer tasks replace its older ones; empty for one by itself
     * @param work what to draw
     * @param <T> what comes of it
     * @return what came of it
     * @throws BenchRefusal if there are too many tasks, a newer one came, it takes too long, or the work says so
     */
    <T> T run(String tab, Work<T> work) throws BenchRefusal {
        Task<T> task = new Task<>(tab, work, longestDrawing);
        enter(task);
        try {
            thread.execute(task);
            return await(task);
        } catch (RejectedExecutionException e) {
            throw BenchRefusal.closing();
        } finally {
            leave(task);
        }
    }

    private synchronized void enter(Task<?> task) throws BenchRefusal {
        List<Task<?>> older = tasks.stream()
                .filter(other -> !task.tab.isEmpty() && other.tab.equals(task.tab))
                .toList();
        older.forEach(this::supersede);
        if (tasks.size() >= MOST) {
            throw busy();
        }
        tasks.add(task);
    }

    private void supersede(Task<?> task) {
        task.answer.completeExceptionally(new BenchRefusal(409, "newer", "a newer request has replaced this one"));
        thread.remove(task);
        tasks.remove(task);
    }

    private synchronized void leave(Task<?> task) {
        tasks.remove(task);
    }

    private <T> T await(Task<T> task) throws BenchRefusal {
        try {
            return task.answer.get(longestWait.toNanos(), TimeUnit.NANOSECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            giveUp(task);
            throw BenchRefusal.closing();
        } catch (TimeoutException e) {
            giveUp(task);
            throw tooSlow();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof BenchRefusal refusal) {
                throw refusal;
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    /** What is being drawn ends with its next frame. */
    private void giveUp(Task<?> task) {
        task.answer.completeExceptionally(tooSlow());
        thread.remove(task);
    }

    private static BenchRefusal tooSlow() {
        return new BenchRefusal(503, "too_slow", "drawing took too long; make the look simpler, or try again");
    }

    /** Ends the thread. Requests that wait are refused, since the page is closing. */
    @Override
    public void close() {
        thread.shutdownNow();
        synchronized (this) {
            tasks.forEach(task -> task.answer.completeExceptionally(BenchRefusal.closing()));
        }
    }
}
