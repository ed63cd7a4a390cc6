package dev.lampwright.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Prints, for each package in PIT's report, how many mutations there were and how many of them the tests killed.
 *
 * <p>One file, run from its source by the profile {@code mutation}; see DEVELOPERS.md.
 */
public final class MutationScore {
    /** PIT's words for a mutation that a test detected: by failing, by never ending, or by the process's end. */
    private static final Set<String> NOTICED = Set.of("KILLED", "TIMED_OUT", "MEMORY_ERROR", "RUN_ERROR");

    private int mutations;
    private int killed;

    private MutationScore() {}

    /**
     * Prints one row for each package.
     *
     * @param args one path, PIT's {@code mutations.csv}: source file, class, mutator, method, line, status, test. A file that does not
     *     exist, as in a module without the package, prints nothing
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        Path report = Path.of(args[0]);
        if (!Files.exists(report)) {
            return;
        }
        Map<String, MutationScore> scores = new TreeMap<>();
        for (String row : Files.readAllLines(report)) {
            List<String> cells = List.of(row.split(",", -1));
            String type = cells.get(1);
            MutationScore score =
                    scores.computeIfAbsent(type.substring(0, type.lastIndexOf('.')), name -> new MutationScore());
            score.mutations++;
            if (NOTICED.contains(cells.get(5))) {
                score.killed++;
            }
        }
        scores.forEach((name, score) -> System.out.printf(
                "%-28s %5d mutations %5d killed %3d %%%n",
                name, score.mutations, score.killed, 100 * score.killed / score.mutations));
    }
}
