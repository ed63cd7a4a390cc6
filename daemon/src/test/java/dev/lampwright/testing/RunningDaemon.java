package dev.lampwright.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The daemon as its user runs it: {@code java -jar lampwright.jar run}, a separate process. May be used by several threads. */
public final class RunningDaemon implements AutoCloseable {
    private static final Path JAR = Path.of("target", "lampwright.jar");
    private static final Duration LONGEST_END = Duration.ofSeconds(20);

    /** Threads that the Java runtime starts and ends by itself, by the beginning of their names. */
    private static final Pattern RUNTIMES_OWN = Pattern.compile(
            "(C[12] Comp|GC Thread|G1 |VM |Attach|Common-Cleaner|process reaper|Signal|Service|Monitor|Notif).*");

    private final Process process;
    private final List<String> log = new ArrayList<>();
    private final Thread listener = new Thread(this::listen, "daemon's log");

    /**
     * How it ended.
     *
     * @param status exit status
     * @param nanos from the signal to the end, in ns
     */
    public record End(int status, long nanos) {}

    private RunningDaemon(Process process) {
        this.process = process;
        listener.setDaemon(true);
        listener.start();
    }

    /**
     * The command that runs the jar.
     *
     * @param options of {@code java}
     * @param arguments of {@code lampwright}
     * @return its words. Signals have their default actions: a runtime in which the serial library has been loaded ignores SIGHUP, and
     *     processes that it starts inherit that, as well as signals that were ignored when it was started itself
     */
    public static List<String> command(List<String> options, String... arguments) {
        List<String> command = new ArrayList<>(Limited.withUsualSignals(List.of(tool("java"))));
        command.addAll(options);
        command.addAll(List.of("-jar", JAR.toString()));
        command.addAll(List.of(arguments));
        return command;
    }

    /**
     * Starts it.
     *
     * @param config its configuration file
     * @param options of {@code java}
     * @return the daemon, possibly not lit yet
     */
    public static RunningDaemon start(Path config, String... options) {
        return start(config, Map.of(), options);
    }

    /**
     * Starts it in an environment.
     *
     * @param config its configuration file
     * @param environment additional variables
     * @param options of {@code java}
     * @return the daemon, possibly not lit yet
     */
    public static RunningDaemon start(Path config, Map<String, String> environment, String... options) {
        ProcessBuilder builder = new ProcessBuilder(command(List.of(options), "run", "--config", config.toString()));
        builder.environment().putAll(environment);
        try {
            return new RunningDaemon(builder.redirectErrorStream(true).start());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Starts it in a custom environment.
     *
     * @param builder command, environment and where the log goes: with anything other than a pipe, {@link #log} stays empty
     * @return the daemon, possibly not lit yet
     */
    public static RunningDaemon start(ProcessBuilder builder) {
        try {
            return new RunningDaemon(builder.start());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String tool(String name) {
        return Path.of(System.getProperty("java.home"), "bin", name).toString();
    }

    private void listen() {
        try (BufferedReader reader = process.inputReader(StandardCharsets.UTF_8)) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                add(line);
            }
        } catch (IOException e) {
            add("the log broke off: " + e);
        }
    }

    private synchronized void add(String line) {
        log.add(line);
    }

    /** All lines that it has written so far, oldest first; a copy. */
    public synchronized List<String> log() {
        return List.copyOf(log);
    }

    /**
     * The lines from a given one on that contain a text.
     *
     * @param from index of the first line to check
     * @param text the text
     * @return the lines, oldest first
     */
    public List<String> linesWith(int from, String text) {
        List<String> all = log();
        return all.subList(from, all.size()).stream()
                .filter(line -> line.contains(text))
                .toList();
    }

    /** How many lines it has written so far. */
    public synchronized int lines() {
        return log.size();
    }

    /**
     * Sends it a signal.
     *
     * @param name of the signal, without {@code SIG}
     */
    public void signal(String name) {
        Tool.run(List.of("kill", "-" + name, Long.toString(process.pid())), "procps");
    }

    /** Whether it runs. */
    public boolean isAlive() {
        return process.isAlive();
    }

    /** Names of its threads, as known to the kernel, in order; without those that the Java runtime starts and ends by itself. */
    public List<String> threads() {
        return inProc("task").stream()
                .map(task -> text(task.resolve("comm")).strip())
                .filter(name -> !RUNTIMES_OWN.matcher(name).matches())
                .sorted()
                .toList();
    }

    /** What its file descriptors refer to, in order; numbers of sockets, pipes and pseudo-terminals left out. */
    public List<String> descriptors() {
        return inProc("fd").stream()
                .map(RunningDaemon::target)
                .map(target -> target.replaceFirst("\\[\\d+]$|(?<=^/dev/pts/)\\d+$", ""))
                .filter(target -> !target.isEmpty())
                .sorted()
                .toList();
    }

    /** Its resident memory after a collection of its garbage, in KiB: {@code VmRSS} of proc(5). */
    public long residentKib() {
        Tool.run(List.of(tool("jcmd"), Long.toString(process.pid()), "GC.run"), "openjdk-17-jdk-headless");
        return residentKibAsItIs();
    }

    /** Its resident memory, in KiB: {@code VmRSS} of proc(5). */
    public long residentKibAsItIs() {
        return kib("status", "VmRSS:");
    }

    /** Its resident memory, in KiB, including its share of memory shared with other processes: {@code Pss} of proc(5). */
    public long proportionalKib() {
        return kib("smaps_rollup", "Pss:");
    }

    /** Its processor time since the start, in s; in steps of a hundredth, as proc(5) counts. */
    public double processorSeconds() {
        List<String> fields = List.of(
                text(proc().resolve("stat")).replaceFirst("(?s).*\\) ", "").split(" ", -1));
        return (Long.parseLong(fields.get(11)) + Long.parseLong(fields.get(12))) / 100.0;
    }

    private long kib(String file, String key) {
        return text(proc().resolve(file))
                .lines()
                .filter(line -> line.startsWith(key))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
                .findFirst()
                .orElseThrow();
    }

    /** Whether it ignores a signal, by the mask in proc(5). */
    public boolean ignores(int signal) {
        String mask = text(proc().resolve("status"))
                .lines()
                .filter(line -> line.startsWith("SigIgn:"))
                .map(line -> line.replaceAll("SigIgn:\\s*", ""))
                .findFirst()
                .orElseThrow();
        return (Long.parseUnsignedLong(mask, 16) >>> (signal - 1) & 1) == 1;
    }

    /** Its state, a letter of proc(5): {@code T} is stopped by a signal. */
    public String state() {
        return text(proc().resolve("stat")).replaceFirst("(?s).*\\) (\\w) .*", "$1");
    }

    private Path proc() {
        return Path.of("/proc", Long.toString(process.pid()));
    }

    private List<Path> inProc(String folder) {
        try (Stream<Path> entries = Files.list(proc().resolve(folder))) {
            return entries.toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What a descriptor refers to; empty if it was closed in the meantime. */
    private static String target(Path descriptor) {
        try {
            return Files.readSymbolicLink(descriptor).toString();
        } catch (IOException e) {
            return "";
        }
    }

    /** The content of a file of proc(5); empty if its process or thread has ended in the meantime. */
    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return "";
        }
    }

    /**
     * Asks it to end (SIGTERM), like a service manager, and waits for it.
     *
     * @return how it ended
     * @throws AssertionError if it has not ended after twenty seconds
     */
    public End terminate() {
        long asked = System.nanoTime();
        process.toHandle().destroy();
        try {
            if (!process.waitFor(LONGEST_END.toSeconds(), TimeUnit.SECONDS)) {
                throw new AssertionError("the daemon does not end; its log: " + log());
            }
            long ended = System.nanoTime();
            listener.join(LONGEST_END.toMillis());
            return new End(process.exitValue(), ended - asked);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while the daemon was ending", e);
        }
    }

    /** Ends it at once, whatever it is doing. */
    @Override
    public void close() {
        process.destroyForcibly();
        try {
            process.waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
