package dev.lampwright.testing;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/**
 * Processes that end, whatever happens. Reading a process's output cannot be interrupted, so a test's timeout does not end a test that
 * waits for a hanging process.
 */
public final class Limited {
    /**
     * Words before a command that restore the default actions of signals: in the background of a script, or under nohup, some are ignored,
     * and every started process inherits that (POSIX.1-2017, Shell and Utilities, 2.11).
     */
    private static final List<String> USUAL_SIGNALS = List.of("env", "--default-signal=HUP,INT,QUIT,TERM");

    private Limited() {}

    /**
     * A command on which signals work, however the tests were started.
     *
     * @param words its words
     * @return the same, with words before it
     */
    public static List<String> withUsualSignals(List<String> words) {
        List<String> all = new ArrayList<>(USUAL_SIGNALS);
        all.addAll(words);
        return all;
    }

    /**
     * Starts a process that is killed, with everything that it has started, if it has not ended in time. The process is killed first: a
     * shell whose child is killed would continue with the next command.
     *
     * @param builder the process to start
     * @param most how long it may run
     * @return the running process
     */
    public static Process start(ProcessBuilder builder, Duration most) throws IOException {
        Process process = builder.start();
        CompletableFuture<Process> unused = process.onExit()
                .orTimeout(most.toMillis(), TimeUnit.MILLISECONDS)
                .exceptionally(late -> {
                    List<ProcessHandle> children = process.descendants().toList();
                    process.destroyForcibly();
                    children.forEach(ProcessHandle::destroyForcibly);
                    return process;
                });
        return process;
    }
}
