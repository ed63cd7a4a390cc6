package dev.lampwright.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LineChangesTest {
    @TempDir
    private Path folder;

    private static String numbers(int from, int to) {
        return IntStream.rangeClosed(from, to).mapToObj(i -> i + "\n").collect(Collectors.joining());
    }

    @Test
    void theSameTextShowsNothing() {
        assertEquals(List.of(), LineChanges.of("a.toml", "x\n", "x\n"));
    }

    /** As GNU diff 3.8 shows the same texts with -u, except for the names. */
    @Test
    void showsThreeLinesAround() {
        String before = numbers(1, 20);
        String after =
                before.replace("\n5\n", "\nfive\n").replace("\n12\n", "\n").replace("20\n", "20");
        assertEquals(
                List.of(
                        "--- a.toml",
                        "+++ a.toml (new)",
                        "@@ -2,14 +2,13 @@",
                        " 2",
                        " 3",
                        " 4",
                        "-5",
                        "+five",
                        " 6",
                        " 7",
                        " 8",
                        " 9",
                        " 10",
                        " 11",
                        "-12",
                        " 13",
                        " 14",
                        " 15",
                        "@@ -17,4 +16,4 @@",
                        " 17",
                        " 18",
                        " 19",
                        "-20",
                        "+20",
                        "\\ No newline at end of file"),
                LineChanges.of("a.toml", before, after));
        assertEquals(List.of("--- a", "+++ a (new)", "@@ -0,0 +1 @@", "+new"), LineChanges.of("a", "", "new\n"));
        assertEquals(List.of("--- a", "+++ a (new)", "@@ -1 +0,0 @@", "-old"), LineChanges.of("a", "old\r\n", ""));
    }

    @Test
    void nothingInItControlsATerminal() {
        assertTrue(LineChanges.of("a\u001b", "", "x\u001b[2J\n").stream().noneMatch(line -> line.contains("\u001b")));
    }

    /** Whatever the texts are, patch(1) turns one into the other. */
    @Test
    void whatItShowsMakesTheOneTextOfTheOther() throws IOException, InterruptedException {
        Random random = new Random(7);
        for (int i = 0; i < 400; i++) {
            List<String> before = some(random, 30);
            List<String> after = new ArrayList<>(before);
            for (int k = random.nextInt(6); k >= 0; k--) {
                int at = random.nextInt(after.size() + 1);
                if (random.nextBoolean() || at == after.size()) {
                    after.addAll(at, some(random, 3));
                } else {
                    after.remove(at);
                }
            }
            String one = String.join("", before);
            String other = String.join("", after);
            assertEquals(other, patched(one, LineChanges.of("x", one, other)));
        }
        assertEquals(
                numbers(3000, 6000),
                patched(numbers(1, 2900), LineChanges.of("x", numbers(1, 2900), numbers(3000, 6000))));
    }

    private static List<String> some(Random random, int most) {
        return IntStream.range(0, random.nextInt(most))
                .mapToObj(i -> (char) ('a' + random.nextInt(5)) + "\n")
                .collect(Collectors.toCollection(ArrayList::new));
    }

    /** By the format's own rules: a hunk begins at a line of the first text, a blank is kept, a minus is dropped, a plus is inserted. */
    private static String patched(String before, List<String> changes) {
        List<String> lines = List.of(before.split("\n"));
        StringBuilder after = new StringBuilder();
        int at = 0;
        for (String change : changes.subList(Math.min(2, changes.size()), changes.size())) {
            if (change.startsWith("@@")) {
                Matcher range = Pattern.compile("@@ -(\\d+)(,\\d+)? .*").matcher(change);
                assertTrue(range.matches(), change);
                int from = Integer.parseInt(range.group(1)) - (",0".equals(range.group(2)) ? 0 : 1);
                while (at < from) {
                    after.append(lines.get(at++)).append('\n');
                }
            } else if (change.startsWith("+")) {
                after.append(change.substring(1)).append('\n');
            } else {
                assertEquals(lines.get(at), change.substring(1));
                after.append(change.startsWith(" ") ? lines.get(at) + "\n" : "");
                at++;
            }
        }
        while (at < lines.size() && !before.isEmpty()) {
            after.append(lines.get(at++)).append('\n');
        }
        return after.toString();
    }

    @Test
    void aFileOfManyLinesIsNoTrouble() throws IOException {
        Path file = Files.writeString(folder.resolve("long"), numbers(1, 50_000));
        String text = Files.readString(file);
        assertEquals(
                2 + 5 + 5,
                LineChanges.of("x", text, "first\n" + text + "last\n").size());
    }
}
