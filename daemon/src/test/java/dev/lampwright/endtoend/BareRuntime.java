package dev.lampwright.endtoend;

import dev.lampwright.testing.Await;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** What an idle Java runtime uses, with the options of the package, for comparison with the daemon's figures. */
public final class BareRuntime {
    private static final int STARTS = 10;
    private static final long SETTLED_NANOS = 2_000_000_000;

    private BareRuntime() {}

    /**
     * Reports that it runs, and does nothing from then on.
     *
     * @param args none
     */
    public static void main(String[] args) throws InterruptedException {
        System.out.println("here");
        Thread.sleep(Long.MAX_VALUE);
    }

    /** Starts it several times and prints how long that takes, and how much memory it then uses. */
    static void print(List<Path> optionFiles, Map<String, String> environment) throws IOException {
        double[] millis = new double[STARTS];
        double resident = 0;
        for (int i = 0; i < STARTS; i++) {
            long started = System.nanoTime();
            Process process = start(optionFiles, environment);
            try {
                process.inputReader().readLine();
                millis[i] = (System.nanoTime() - started) / 1e6;
                resident = i == STARTS - 1 ? settledMib(process) : 0;
            } finally {
                process.destroyForcibly();
            }
        }
        Figures.print("bare Java runtime, start to its first line", millis);
        System.out.printf(Locale.ROOT, "bare Java runtime: resident %.1f MiB%n", resident);
    }

    /** The archive of classes is the runtime's own: that of the package contains the daemon's classes. */
    private static Process start(List<Path> optionFiles, Map<String, String> environment) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        for (Path file : optionFiles) {
            Files.readAllLines(file).stream()
                    .filter(line -> line.startsWith("-") && !line.contains("SharedArchiveFile"))
                    .forEach(command::add);
        }
        command.addAll(List.of("-cp", "target/test-classes", BareRuntime.class.getName()));
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().putAll(environment);
        return builder.start();
    }

    private static double settledMib(Process process) throws IOException {
        long settled = System.nanoTime() + SETTLED_NANOS;
        Await.until("it has settled", () -> System.nanoTime() - settled > 0);
        try (Stream<String> lines = Files.lines(Path.of("/proc", Long.toString(process.pid()), "status"))) {
            return lines.filter(line -> line.startsWith("VmRSS:"))
                            .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
                            .findFirst()
                            .orElseThrow()
                    / 1024.0;
        }
    }
}
