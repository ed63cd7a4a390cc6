package dev.lampwright.testing;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * The output of a separate Java process.
 *
 * @param status its exit status
 * @param output what it wrote, to either stream
 */
public record Child(int status, String output) {
    private static final Duration LONGEST = Duration.ofMinutes(2);

    /**
     * Runs a class of this class path in a separate process, for two minutes at most.
     *
     * @param before words in the command before {@code java}; may be empty
     * @param options of {@code java}
     * @param main the class
     * @param arguments for it
     * @return its output
     */
    public static Child run(List<String> before, List<String> options, Class<?> main, String... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(before);
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(options);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
        command.addAll(List.of(arguments));
        return run(command);
    }

    /**
     * Runs a command, for two minutes at most.
     *
     * @param command its words
     * @return its output
     */
    public static Child run(List<String> command) throws IOException, InterruptedException {
        Process process =
                Limited.start(new ProcessBuilder(Limited.withUsualSignals(command)).redirectErrorStream(true), LONGEST);
        try {
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            return new Child(process.waitFor(), output);
        } finally {
            process.destroyForcibly();
        }
    }
}
