package dev.lampwright.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Prints what a frame of 300 pixels and eight layers costs, in less than three minutes: in a hot loop with warm caches, next to Java2D's
 * time for the layers alone in the same run; and in place, sixty times a second in the daemon, with cold caches. Each for both compilers of
 * the runtime; the package uses only the first. Times are processor times, so other work on the machine matters less.
 * |<pre>mvn -q -P benchmark test -DskipTests -Dbenchmark=FrameCost</pre>
 */
final class FrameCost {
    private static final int FORKS = 3;
    private static final List<String> USUAL = List.of("-XX:+UseSerialGC", "-Xmx256m", "-Djava.awt.headless=true");
    private static final List<String> COMPILERS = List.of("-XX:TieredStopAtLevel=1", "-XX:TieredStopAtLevel=4");
    private static final Path PACKAGING = Path.of("..", "systemd");
    private static final List<String> OF_THE_PACKAGE =
            List.of("@" + PACKAGING.resolve("java.options"), "@" + PACKAGING.resolve("run.options"));

    private FrameCost() {}

    /** Measures and prints. */
    static void print() throws IOException, InterruptedException {
        System.out.printf(Locale.ROOT, "%-52s %12s %12s%n", "", "compiler 1", "compiler 2");
        double[][] hot = measure(HotLoop.class, FORKS, USUAL);
        row("hot loop, whole frame, µs", hot, 0);
        row("hot loop, without the flash limit, µs", hot, 1);
        row("hot loop, the layers alone by Java2D, µs", hot, 2);
        row("whole frame ÷ Java2D", ratios(hot, 0, 2), 0);
        row("flash limit ÷ whole frame", shares(hot), 0);
        row("hot loop, allocated a frame, bytes", hot, 3);
        place("moves", InPlace.MOVING);
        place("stands still", InPlace.STILL);
    }

    private static void place(String what, String light) throws IOException, InterruptedException {
        double[][] place = measure(InPlace.class, 1, OF_THE_PACKAGE, light);
        row("in place, light that " + what + ", a frame, µs", place, 0);
        row("in place, light that " + what + ", process, % of a core", place, 1);
        row("in place, light that " + what + ", resident, MiB", place, 2);
    }

    private static double[][] ratios(double[][] figures, int of, int to) {
        return Arrays.stream(figures)
                .map(each -> new double[] {each[of] / each[to]})
                .toArray(double[][]::new);
    }

    private static double[][] shares(double[][] hot) {
        return Arrays.stream(hot)
                .map(each -> new double[] {(each[0] - each[1]) / each[0]})
                .toArray(double[][]::new);
    }

    private static void row(String what, double[][] figures, int index) {
        System.out.printf(Locale.ROOT, "%-52s %12.2f %12.2f%n", what, figures[0][index], figures[1][index]);
    }

    /** The median of several forks for each compiler. */
    private static double[][] measure(Class<?> what, int forks, List<String> options, String... args)
            throws IOException, InterruptedException {
        double[][] medians = new double[COMPILERS.size()][];
        for (int i = 0; i < medians.length; i++) {
            List<double[]> runs = new ArrayList<>();
            for (int fork = 0; fork < forks; fork++) {
                runs.add(run(options, COMPILERS.get(i), what, args));
            }
            medians[i] = medians(runs);
        }
        return medians;
    }

    private static double[] medians(List<double[]> runs) {
        double[] medians = new double[runs.get(0).length];
        Arrays.setAll(
                medians, i -> runs.stream().mapToDouble(run -> run[i]).sorted().toArray()[runs.size() / 2]);
        return medians;
    }

    private static double[] run(List<String> options, String compiler, Class<?> what, String... args)
            throws IOException, InterruptedException {
        List<String> words = new ArrayList<>();
        words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        words.addAll(options);
        words.add(compiler);
        words.addAll(List.of("-cp", System.getProperty("java.class.path"), what.getName()));
        words.addAll(List.of(args));
        Process process = new ProcessBuilder(words)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String answer = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IOException(what.getSimpleName() + " failed: " + answer);
        }
        String last = answer.strip().substring(answer.strip().lastIndexOf('\n') + 1);
        return Arrays.stream(last.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }
}
