package dev.lampwright.file;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * What differs between two texts, line by line, in the unified format of {@code diff -u} (POSIX.1-2017, {@code diff}, “Diff -u or -U Output
 * Format”). As few lines as possible are added and removed: E. Myers, “An O(ND) Difference Algorithm and Its Variations”, Algorithmica 1,
 * 1986 (the greedy algorithm; from memory).
 */
public final class LineChanges {
    private static final int CONTEXT = 3;

    /** After this many differing lines, everything between the common beginning and end is shown as replaced. Our own choice. */
    private static final int MOST_CHANGES = 2000;

    private static final String NO_END = "\\ No newline at end of file";

    /** One line, and whether it stays ({@code ' '}), is removed ({@code '-'}) or added ({@code '+'}). */
    private record Line(char mark, String text, int before, int after) {}

    private final List<String> before;
    private final List<String> after;
    private final List<Line> lines = new ArrayList<>();

    private LineChanges(List<String> before, List<String> after) {
        this.before = before;
        this.after = after;
    }

    /**
     * Compares two texts.
     *
     * @param name their name
     * @param before the old text
     * @param after the new text
     * @return lines to show; empty if the texts are the same. Characters that would control a terminal are shown as dots
     */
    public static List<String> of(String name, String before, String after) {
        if (before.equals(after)) {
            return List.of();
        }
        LineChanges changes = new LineChanges(split(before), split(after));
        changes.compare();
        List<String> shown = new ArrayList<>(List.of("--- " + name, "+++ " + name + " (new)"));
        changes.hunks(shown);
        return shown.stream().map(LineChanges::printable).toList();
    }

    private static String printable(String line) {
        return line.replaceAll("[\\p{Cntrl}&&[^\t]]", ".");
    }

    /** Each line with its end, so that a missing line end is a difference. */
    private static List<String> split(String text) {
        List<String> lines = new ArrayList<>();
        int from = 0;
        while (from < text.length()) {
            int end = text.indexOf('\n', from);
            int to = end < 0 ? text.length() : end + 1;
            lines.add(text.substring(from, to));
            from = to;
        }
        return lines;
    }

    private void compare() {
        int same = 0;
        int least = Math.min(before.size(), after.size());
        while (same < least && before.get(same).equals(after.get(same))) {
            same++;
        }
        int tail = 0;
        while (tail < least - same && before.get(before.size() - 1 - tail).equals(after.get(after.size() - 1 - tail))) {
            tail++;
        }
        for (int i = 0; i < same; i++) {
            add(' ', i, i);
        }
        between(same, before.size() - tail, after.size() - tail);
        for (int i = tail; i > 0; i--) {
            add(' ', before.size() - i, after.size() - i);
        }
    }

    private void add(char mark, int at, int other) {
        lines.add(new Line(mark, mark == '+' ? after.get(other) : before.get(at), at, other));
    }

    /** The shortest way through the table of both texts: right is a line removed, down one added, diagonal one that stays. */
    private void between(int from, int endBefore, int endAfter) {
        int width = endBefore - from;
        int height = endAfter - from;
        int most = Math.min(width + height, MOST_CHANGES);
        int[] furthest = new int[2 * most + 3];
        List<int[]> history = new ArrayList<>();
        for (int changes = 0; changes <= most; changes++) {
            history.add(furthest.clone());
            for (int diagonal = -changes; diagonal <= changes; diagonal += 2) {
                int at = step(furthest, diagonal, changes, most);
                while (at < width
                        && at - diagonal < height
                        && before.get(from + at).equals(after.get(from + at - diagonal))) {
                    at++;
                }
                furthest[diagonal + most + 1] = at;
                if (at >= width && at - diagonal >= height) {
                    back(history, from, width, height, most);
                    return;
                }
            }
        }
        for (int i = 0; i < width; i++) {
            add('-', from + i, from);
        }
        for (int i = 0; i < height; i++) {
            add('+', endBefore, from + i);
        }
    }

    private static int step(int[] furthest, int diagonal, int changes, int most) {
        boolean down = diagonal == -changes
                || (diagonal != changes && furthest[diagonal + most] < furthest[diagonal + most + 2]);
        return down ? furthest[diagonal + most + 2] : furthest[diagonal + most] + 1;
    }

    private void back(List<int[]> history, int from, int width, int height, int most) {
        Deque<Line> path = new ArrayDeque<>();
        int at = width;
        int other = height;
        for (int changes = history.size() - 1; changes >= 0; changes--) {
            int diagonal = at - other;
            int[] furthest = history.get(changes);
            boolean down = diagonal == -changes
                    || (diagonal != changes && furthest[diagonal + most] < furthest[diagonal + most + 2]);
            int start = changes == 0 ? 0 : down ? furthest[diagonal + most + 2] : furthest[diagonal + most];
            int startOther = changes == 0 ? 0 : down ? start - diagonal - 1 : start - diagonal + 1;
            int turn = changes == 0 ? 0 : down ? start : start + 1;
            while (at > turn) {
                at--;
                other--;
                path.push(new Line(' ', before.get(from + at), from + at, from + other));
            }
            if (changes > 0) {
                at = start;
                other = startOther;
                path.push(
                        down
                                ? new Line('+', after.get(from + other), from + at, from + other)
                                : new Line('-', before.get(from + at), from + at, from + other));
            }
        }
        lines.addAll(path);
    }

    private void hunks(List<String> shown) {
        int at = 0;
        while (at < lines.size()) {
            while (at < lines.size() && lines.get(at).mark == ' ') {
                at++;
            }
            if (at < lines.size()) {
                int from = Math.max(0, at - CONTEXT);
                int to = endOfHunk(at);
                hunk(shown, lines.subList(from, to));
                at = to;
            }
        }
    }

    /** After the context of the last change that is close enough to the previous ones. */
    private int endOfHunk(int first) {
        int last = first;
        for (int i = first; i < lines.size() && i - last <= 2 * CONTEXT + 1; i++) {
            if (lines.get(i).mark != ' ') {
                last = i;
            }
        }
        return Math.min(lines.size(), last + 1 + CONTEXT);
    }

    private static void hunk(List<String> shown, List<Line> hunk) {
        long taken = hunk.stream().filter(line -> line.mark != '+').count();
        long added = hunk.stream().filter(line -> line.mark != '-').count();
        Line first = hunk.get(0);
        shown.add("@@ -" + range(first.before, taken) + " +" + range(first.after, added) + " @@");
        for (Line line : hunk) {
            boolean ended = line.text.endsWith("\n");
            shown.add(line.mark
                    + line.text
                            .substring(0, line.text.length() - (ended ? 1 : 0))
                            .replaceFirst("\r$", ""));
            if (!ended) {
                shown.add(NO_END);
            }
        }
    }

    /** The first line, from 1, and how many; if there are none, the preceding line. */
    private static String range(int from, long count) {
        return (count == 0 ? from : from + 1) + (count == 1 ? "" : "," + count);
    }
}
