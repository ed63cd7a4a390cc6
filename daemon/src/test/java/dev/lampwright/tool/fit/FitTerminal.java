package dev.lampwright.tool.fit;

import dev.lampwright.testing.Limited;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.function.BiFunction;

/** The command as its user runs it, at its own pseudo-terminal, which {@code script} (of Debian's bsdutils) creates. */
final class FitTerminal implements AutoCloseable {
    private static final String PROMPT = "> ";
    private static final Duration LONGEST = Duration.ofMinutes(8);

    private final Process process;
    private final StringBuilder all = new StringBuilder();

    /** The shell started by {@code script} is replaced by the command: a shell that stays, like dash, would be killed by Ctrl-C itself. */
    FitTerminal(List<String> command) throws IOException {
        process = Limited.start(
                new ProcessBuilder("script", "-qfec", "exec " + String.join(" ", command), "/dev/null")
                        .redirectErrorStream(true),
                LONGEST);
    }

    /** Everything that has appeared on the terminal; any thread may call it. */
    synchronized String text() {
        return all.toString();
    }

    private synchronized void add(char next) {
        all.append(next);
    }

    /**
     * Answers all questions.
     *
     * @param answers what to type, with its end, by how many questions came before and the lines since the last
     * @return the exit status; that of a killed process if it has not ended in time
     */
    int talk(BiFunction<Integer, List<String>, String> answers) throws IOException, InterruptedException {
        Reader reader = new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8);
        OutputStream typing = process.getOutputStream();
        StringBuilder since = new StringBuilder();
        int count = 0;
        for (int next = reader.read(); next >= 0; next = reader.read()) {
            add((char) next);
            since.append((char) next);
            if (since.toString().equals(PROMPT) || since.toString().endsWith("\n" + PROMPT)) {
                List<String> lines = since.toString().lines().toList();
                since.setLength(0);
                typing.write(answers.apply(count++, lines.subList(0, lines.size() - 1))
                        .getBytes(StandardCharsets.UTF_8));
                typing.flush();
            }
        }
        return process.waitFor();
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
