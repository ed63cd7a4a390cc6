package dev.lampwright.testing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/**
 * A board running the reference firmware's machine code, at the far end of a pseudo-terminal: {@code firmware-notes/emulator}, whose README
 * describes the commands and lines. May be used by several threads.
 */
public final class EmulatedBoard implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int LONGEST_END_S = 10;

    private final Process process;
    private final Path port;
    private final Thread listener = new Thread(this::listen, "board's lines");
    private final List<Latched> frames = new ArrayList<>();
    private final List<JsonNode> errors = new ArrayList<>();
    private final List<JsonNode> answers = new ArrayList<>();
    private boolean ready;

    /**
     * What the strip shows from a given moment on.
     *
     * @param micros emulated time since power-on, in µs
     * @param output number of the data line; 0 on a board with only one
     * @param strip the bytes, as they came out of the pin
     * @param faults what was wrong with the waveform; empty if nothing was
     * @param duties duty of each dimmer, 0 to 1
     * @param heardNanos when it was reported, on the clock of {@link System#nanoTime}
     */
    public record Latched(
            long micros, int output, List<Integer> strip, List<String> faults, List<Double> duties, long heardNanos) {}

    private EmulatedBoard(Process process, Path port) {
        this.process = process;
        this.port = port;
        listener.setDaemon(true);
        listener.start();
    }

    /**
     * Starts a board.
     *
     * @param build its firmware
     * @param port where its device node will appear
     * @return the board, plugged in
     */
    public static EmulatedBoard start(Firmware.Build build, Path port) {
        try {
            List<String> command = new ArrayList<>(Firmware.board(build));
            command.addAll(List.of("--link", port.toString()));
            EmulatedBoard board = new EmulatedBoard(
                    new ProcessBuilder(command).redirectError(Redirect.INHERIT).start(), port);
            Await.until("the board's device", board::isReady);
            return board;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void listen() {
        try (BufferedReader reader = process.inputReader(StandardCharsets.UTF_8)) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                take(JSON.readTree(line));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the board's lines cannot be read", e);
        }
    }

    private synchronized void take(JsonNode line) {
        if (line.has("frame")) {
            frames.add(latched(line));
        } else if (line.has("error")) {
            errors.add(line);
        } else if (line.has("answer")) {
            answers.add(line);
        } else if (line.path("event").asText().equals("ready")) {
            ready = true;
        }
    }

    private static Latched latched(JsonNode line) {
        List<Integer> strip = new ArrayList<>();
        for (byte value : HexFormat.of().parseHex(line.get("frame").asText())) {
            strip.add(value & 0xFF);
        }
        List<String> faults = new ArrayList<>();
        line.path("faults").forEach(fault -> faults.add(fault.asText()));
        List<Double> duties = new ArrayList<>();
        line.path("dimmers").forEach(dimmer -> duties.add(dimmer.path("duty").asDouble(Double.NaN)));
        return new Latched(
                line.get("t_us").asLong(),
                line.path("output").asInt(0),
                List.copyOf(strip),
                List.copyOf(faults),
                List.copyOf(duties),
                System.nanoTime());
    }

    private synchronized boolean isReady() {
        return ready;
    }

    /** Its device node, or where it will be. */
    public Path port() {
        return port;
    }

    /** All frames that have been latched so far, oldest first; a copy. */
    public synchronized List<Latched> frames() {
        return List.copyOf(frames);
    }

    /** All frames that have been latched so far, oldest first, which are then removed. */
    public synchronized List<Latched> drainFrames() {
        List<Latched> drained = List.copyOf(frames);
        frames.clear();
        return drained;
    }

    /** Whether the last latched frame meets a condition; false if there was none. */
    public synchronized boolean lastIs(Predicate<Latched> so) {
        return !frames.isEmpty() && so.test(last());
    }

    /** The last latched frame; there must have been one. */
    public synchronized Latched last() {
        return frames.get(frames.size() - 1);
    }

    /** The errors that it has reported so far: lost bytes, a stopped firmware; a copy. */
    public synchronized List<JsonNode> errors() {
        return List.copyOf(errors);
    }

    /**
     * Sends a command. One at a time.
     *
     * @param command its line
     * @return the answer
     */
    public JsonNode command(String command) {
        int before = answersSoFar();
        try {
            Writer writer = process.outputWriter();
            writer.write(command + "\n");
            writer.flush();
        } catch (IOException e) {
            throw new UncheckedIOException("the board does not take " + command, e);
        }
        Await.until("the board's answer to " + command, () -> answersSoFar() > before);
        JsonNode answer = answer(before);
        if (answer.path("answer").asText().equals("refused")) {
            throw new AssertionError("the board refused " + command + ": " + answer);
        }
        return answer;
    }

    private synchronized int answersSoFar() {
        return answers.size();
    }

    private synchronized JsonNode answer(int index) {
        return answers.get(index);
    }

    /** Its figures, as described in its README. */
    public JsonNode stats() {
        return command("stats");
    }

    /** Ends it and its device. */
    @Override
    public void close() {
        process.toHandle().destroy();
        try {
            if (!process.waitFor(LONGEST_END_S, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new AssertionError("the board does not end");
            }
            listener.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
