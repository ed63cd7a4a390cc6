package dev.lampwright.tool.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** A table in the terminal: the first column to the left, numbers to the right. */
final class Columns {
    private static final String GAP = "  ";

    private final List<String[]> rows = new ArrayList<>();

    Columns(String... headings) {
        rows.add(headings);
    }

    /**
     * Adds a row.
     *
     * @param cells as many as there are headings
     */
    void row(String... cells) {
        rows.add(cells);
    }

    /** The table, headings first. */
    List<String> lines() {
        int[] widths = IntStream.range(0, rows.get(0).length).map(this::width).toArray();
        return rows.stream().map(row -> line(row, widths)).toList();
    }

    private int width(int column) {
        return rows.stream().mapToInt(row -> row[column].length()).max().orElse(0);
    }

    private static String line(String[] row, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < row.length; i++) {
            String blanks = " ".repeat(widths[i] - row[i].length());
            boolean number =
                    i > 0 && (row[i].isEmpty() || Character.isDigit(row[i].charAt(0)) || row[i].charAt(0) == '-');
            line.append(GAP).append(number ? blanks + row[i] : row[i] + blanks);
        }
        return line.toString().stripTrailing();
    }
}
