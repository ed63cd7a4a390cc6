package dev.lampwright.testing;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/**
 * Processes that end, whatever happens. A read of what a process writes cannot be interrupted, so no timeout of a test ends a test that waits
 * for one that hangs.
 */
public final class Limited {
    /**
     * Words before a command that let signals do to it what they usually do: who starts a test in the background of a script, or under
     * nohup, has some of them ignored, and what is ignored is handed on to every process that is started (POSIX.1-2017, Shell and Utilities,
     * 2.11).
     */
    private static final List<String> USUAL_SIGNALS = List.of("env", "--default-signal=HUP,INT,QUIT,TERM");

    private Limited() {}

    /**
     * A command on which signals work, whoever started the tests.
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
     * Starts a process that is killed, and all that it has started with it, if it has not ended in time. It goes first: a shell whose child
     * is killed would go on with the next command.
     *
     * @param builder what to start
     * @param most how long it may run
     * @return it, running
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
