package dev.lampwright.cli;

import dev.lampwright.demo.ColourDepth;
import dev.lampwright.shelf.PrinterRow;
import dev.lampwright.shelf.RigStatus;
import dev.lampwright.shelf.ShelfRow;
import dev.lampwright.shelf.Standing;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * A shelf as lines of text: a summary, then a line for each rig and one for each of several printers, with another below if there is
 * something to say.
 */
final class ShelfTable {
    private static final int NAME = 14;
    private static final int HOST = 10;
    private static final int STATE = 12;
    private static final int SHARE = 5;
    private static final int LEFT = 10;
    private static final int BEFORE_STRIP = NAME + HOST + STATE + SHARE + LEFT + 5 * 2;
    private static final int LONGEST_STRIP = 32;
    private static final int DIGITS = 6;
    private static final String SHADES = " .:-=+*#%@";

    private final ColourDepth depth;
    private final int columns;

    /**
     * Creates a table.
     *
     * @param depth colours of the terminal
     * @param columns its width
     */
    ShelfTable(ColourDepth depth, int columns) {
        this.depth = depth;
        this.columns = columns;
    }

    /**
     * Everything in one line.
     *
     * @param rows the rigs
     */
    static String summary(List<ShelfRow> rows) {
        if (rows.isEmpty()) {
            return "no rig reports here";
        }
        List<String> parts = new ArrayList<>();
        parts.add(rows.size() == 1 ? "1 rig" : rows.size() + " rigs");
        long needing = count(rows, Standing::needsPerson);
        parts.add(
                switch ((int) Math.min(2, needing)) {
                    case 0 -> "none needs you";
                    case 1 -> "1 needs you";
                    default -> needing + " need you";
                });
        long working = count(rows, Standing.WORKING::equals);
        if (working > 0) {
            parts.add(working + " at work" + next(rows));
        }
        long lost = count(rows, Standing.LOST::equals);
        if (lost > 0) {
            parts.add(lost + " lost");
        }
        return String.join(", ", parts);
    }

    private static long count(List<ShelfRow> rows, Predicate<Standing> counted) {
        return rows.stream()
                .flatMap(row -> row.each().stream())
                .filter(printer -> counted.test(printer.standing()))
                .count();
    }

    private static String next(List<ShelfRow> rows) {
        OptionalDouble soonest = rows.stream()
                .flatMap(row -> row.each().stream())
                .filter(printer -> printer.standing() == Standing.WORKING)
                .mapToDouble(printer -> printer.doing().leftSeconds())
                .filter(seconds -> !Double.isNaN(seconds))
                .min();
        return soonest.isPresent() ? " (next ready in " + time(soonest.getAsDouble()) + ")" : "";
    }

    /**
     * The rigs.
     *
     * @param rows in their order
     * @param most maximum number of lines, 3 or more
     * @return a header line, then those of the rigs; the last one says how many did not fit
     */
    List<String> lines(List<ShelfRow> rows, int most) {
        List<String> lines = new ArrayList<>();
        lines.add(cells("RIG", "ON", "STATE", "DONE", "LEFT", "STRIP").stripTrailing());
        Map<String, Long> names =
                rows.stream().collect(Collectors.groupingBy(row -> row.status().rig(), Collectors.counting()));
        int shown = 0;
        for (ShelfRow row : rows) {
            List<String> own = row(row, names.get(row.status().rig()) > 1);
            boolean last = shown == rows.size() - 1;
            if (lines.size() + own.size() + (last ? 0 : 1) > most) {
                break;
            }
            lines.addAll(own);
            shown++;
        }
        if (shown < rows.size()) {
            lines.add("… and " + (rows.size() - shown) + " more; make the window taller, or use --once");
        }
        return lines;
    }

    private List<String> row(ShelfRow row, boolean isNamesake) {
        RigStatus status = row.status();
        List<PrinterRow> printers = row.printers();
        String name = isNamesake || status.rig().isEmpty() ? end(status.prefix(), NAME) : status.rig();
        boolean shows = row.standing().compareTo(Standing.LOST) < 0 || row.standing() == Standing.SILENT;
        String strip = shows ? strip(status.strip()) : "";
        List<String> lines = new ArrayList<>();
        if (printers.isEmpty()) {
            lines.add(cells(name, status.host(), row.each().get(0), strip));
        } else {
            lines.add(cells(name, status.host(), "", "", "", strip).stripTrailing());
        }
        addNote(lines, "  ", note(row));
        for (PrinterRow printer : printers) {
            lines.add(cells("  " + printer.name(), "", printer, ""));
            addNote(lines, "    ", fault(printer));
        }
        return lines;
    }

    private void addNote(List<String> lines, String indent, String note) {
        if (!note.isEmpty()) {
            lines.add(indent + beginning(note, columns - indent.length()).stripTrailing());
        }
    }

    private static String cells(String name, String host, PrinterRow printer, String strip) {
        boolean told = printer.standing().compareTo(Standing.LOST) < 0;
        double left = printer.doing().leftSeconds();
        return cells(
                        name,
                        host,
                        state(printer),
                        told ? share(printer.doing().progress()) : "",
                        told && !Double.isNaN(left) ? time(left) : "",
                        strip)
                .stripTrailing();
    }

    private static String cells(String name, String host, String state, String share, String left, String strip) {
        return beginning(name, NAME) + "  " + beginning(host, HOST) + "  " + beginning(state, STATE) + "  "
                + String.format(Locale.ROOT, "%" + SHARE + "s  %" + LEFT + "s  ", share, left) + strip;
    }

    private static String beginning(String text, int width) {
        int length = text.codePointCount(0, text.length());
        return length <= width
                ? text + " ".repeat(width - length)
                : text.substring(0, text.offsetByCodePoints(0, width - 1)) + "…";
    }

    private static String end(String text, int width) {
        int length = text.codePointCount(0, text.length());
        return length <= width ? text : "…" + text.substring(text.offsetByCodePoints(0, length - width + 1));
    }

    private static String state(PrinterRow row) {
        return switch (row.standing()) {
            case FAULT -> "FAULT";
            case ACKNOWLEDGED -> "acknowledged";
            case HELD -> "paused";
            case DONE, WORKING, IDLE ->
                row.doing().state().equals("warming") ? "heating" : row.doing().state();
            case LOST -> "lost";
            case SILENT -> "no report";
            case ENDED -> "ended";
        };
    }

    private static String fault(PrinterRow row) {
        return row.standing().compareTo(Standing.ACKNOWLEDGED) <= 0
                ? row.doing().faultText()
                : "";
    }

    /** What does not fit into any column. */
    private static String note(ShelfRow row) {
        List<String> notes = new ArrayList<>();
        RigStatus status = row.status();
        if (row.printers().isEmpty()) {
            notes.add(fault(row.each().get(0)));
        }
        if (row.standing() == Standing.LOST) {
            notes.add(
                    status.online()
                            ? "nothing heard for " + time(row.heardSeconds())
                                    + "; look at its computer, or at the way to its broker"
                            : "the broker has lost it; look at its computer");
        }
        if (row.standing().compareTo(Standing.LOST) < 0 && !status.light().isLit()) {
            notes.add("no light: the controller is " + status.light().link());
        }
        if (row.twice()) {
            notes.add("two daemons report on " + status.prefix() + "; give one of them another prefix");
        }
        return notes.stream().filter(note -> !note.isEmpty()).collect(Collectors.joining("; "));
    }

    private static String share(double progress) {
        return Double.isNaN(progress) ? "" : Math.round(progress * 100) + " %";
    }

    /** A time precise enough for planning: in steps of five seconds below a minute, then minutes, then hours and minutes. */
    static String time(double seconds) {
        if (Double.isNaN(seconds)) {
            return "an unknown time";
        }
        long minutes = Math.round(seconds / 60);
        if (seconds < 57) {
            return Math.max(5, 5 * Math.round(seconds / 5)) + " s";
        }
        if (minutes < 100) {
            return minutes + " min";
        }
        return minutes < 48 * 60
                ? minutes / 60 + " h " + minutes % 60 + " min"
                : Math.round(minutes / 1440.0) + " days";
    }

    private String strip(String hex) {
        int colours = hex.length() / DIGITS;
        int width = Math.min(colours, Math.min(LONGEST_STRIP, Math.max(1, columns - BEFORE_STRIP)));
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < width; i++) {
            int at = i * colours / width * DIGITS;
            text.append(cell(level(hex, at), level(hex, at + 2), level(hex, at + 4)));
        }
        return text.append(width == 0 ? "" : depth.reset()).toString();
    }

    private String cell(double red, double green, double blue) {
        return depth == ColourDepth.PLAIN
                ? Character.toString(SHADES.charAt(
                        (int) Math.round(Math.max(red, Math.max(green, blue)) * (SHADES.length() - 1))))
                : depth.foreground(red, green, blue) + '█';
    }

    private static double level(String hex, int at) {
        return Integer.parseInt(hex, at, at + 2, 16) / 255.0;
    }

    /**
     * Where rigs were searched and found.
     *
     * @param rows the rigs
     * @param levels how many levels of prefixes were searched
     */
    static String places(List<ShelfRow> rows, int levels) {
        Map<String, Long> places = rows.stream()
                .map(row -> place(row.status().prefix()))
                .collect(Collectors.groupingBy(Function.identity(), TreeMap::new, Collectors.counting()));
        String found = places.entrySet().stream()
                .map(place -> place.getKey() + (place.getValue() > 1 ? " (" + place.getValue() + ")" : ""))
                .collect(Collectors.joining(", "));
        return (found.isEmpty() ? "" : "Found under " + found + ". ") + "Looked for prefixes of up to "
                + (levels == 1 ? "1 level" : levels + " levels") + ".";
    }

    /** The common part of a farm's prefixes. */
    private static String place(String prefix) {
        int slash = prefix.lastIndexOf('/');
        return slash < 0 ? prefix : prefix.substring(0, slash + 1) + "…";
    }
}
