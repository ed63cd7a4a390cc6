package dev.lampwright.cli;

import dev.lampwright.demo.ColourDepth;
import dev.lampwright.history.Account;
import dev.lampwright.history.StateSpan;
import dev.lampwright.printer.PrinterState;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * A ribbon of states over time in lines of text: a row of times, a row of blocks in the colours of the looks if the terminal shows colours,
 * and a row of letters where a state begins; without colours only the letters. A cell shows the state that took most of its time, or a
 * fault if there was one.
 */
final class StateRibbon {
    private static final List<Duration> STEPS = List.of(
            Duration.ofMinutes(5),
            Duration.ofMinutes(15),
            Duration.ofMinutes(30),
            Duration.ofHours(1),
            Duration.ofHours(2),
            Duration.ofHours(3),
            Duration.ofHours(4),
            Duration.ofHours(6),
            Duration.ofHours(12),
            Duration.ofDays(1),
            Duration.ofDays(2),
            Duration.ofDays(7),
            Duration.ofDays(14),
            Duration.ofDays(30));
    private static final int LABEL_COLUMNS = 8;
    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final String MARGIN = "  ";
    private static final char BLOCK = '█';
    private static final char UNWATCHED = ' ';
    private static final int HEX = 16;
    private static final double FULL = 255;

    private final long from;
    private final long to;
    private final ZoneId zone;
    private final Map<PrinterState, String> colours;
    private final ColourDepth depth;
    private final PrinterState[] cells;

    /**
     * Creates one from an account.
     *
     * @param account what has happened
     * @param from the beginning of the time to show; it extends to the end of the account
     * @param zone the local time zone
     * @param colours for each state a colour, {@code #rrggbb}
     * @param depth colours of the terminal
     * @param columns width of the ribbon, including the margin
     */
    StateRibbon(
            Account account,
            Instant from,
            ZoneId zone,
            Map<PrinterState, String> colours,
            ColourDepth depth,
            int columns) {
        this.from = from.toEpochMilli();
        this.to = Math.max(this.from + 1, account.asOf().toEpochMilli());
        this.zone = zone;
        this.colours = colours;
        this.depth = depth;
        cells = new PrinterState[Math.max(1, columns - MARGIN.length())];
        fill(account.spans());
    }

    private void fill(List<StateSpan> spans) {
        List<Map<PrinterState, Long>> times = new ArrayList<>();
        for (int i = 0; i < cells.length; i++) {
            times.add(new EnumMap<>(PrinterState.class));
        }
        for (StateSpan span : spans) {
            long begins = Math.max(from, span.from().millis());
            long ends = Math.min(to, span.to().millis());
            for (int cell = cell(begins); begins <= ends && cell <= cell(ends); cell++) {
                long within = Math.min(ends, edge(cell + 1)) - Math.max(begins, edge(cell));
                if (within > 0 || begins == ends) {
                    times.get(cell).merge(span.state(), within, Long::sum);
                }
            }
        }
        for (int i = 0; i < cells.length; i++) {
            cells[i] = shown(times.get(i));
        }
    }

    /** Null if nobody watched. */
    private static PrinterState shown(Map<PrinterState, Long> times) {
        if (times.containsKey(PrinterState.FAULT)) {
            return PrinterState.FAULT;
        }
        return times.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse(null);
    }

    private int cell(long millis) {
        return (int) Math.max(0, Math.min(cells.length - 1L, (millis - from) * cells.length / (to - from)));
    }

    private long edge(int cell) {
        return from + (to - from) * cell / cells.length;
    }

    /**
     * The picture.
     *
     * @return its lines, with what each colour or letter means
     */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add(MARGIN + times());
        if (depth != ColourDepth.PLAIN) {
            lines.add(MARGIN + blocks());
        }
        lines.add((MARGIN + letters()).stripTrailing());
        lines.add(MARGIN + legend());
        return lines;
    }

    private String times() {
        StringBuilder line = new StringBuilder();
        Duration step = step();
        boolean days = step.toDays() > 0;
        ZonedDateTime first = Instant.ofEpochMilli(from).atZone(zone);
        ZonedDateTime time = first.toLocalDate().atStartOfDay(zone);
        for (; time.toInstant().toEpochMilli() < to; time = days ? time.plusDays(step.toDays()) : time.plus(step)) {
            long millis = time.toInstant().toEpochMilli();
            String label = (days || time.toLocalTime().toSecondOfDay() == 0 ? DAY : HOUR).format(time);
            int at = cell(millis);
            if (millis >= from && at >= line.length() && at + label.length() <= cells.length) {
                line.append(" ".repeat(at - line.length())).append(label).append(' ');
            }
        }
        return line.toString().stripTrailing();
    }

    private Duration step() {
        long least = (to - from) * LABEL_COLUMNS / cells.length;
        return STEPS.stream()
                .filter(step -> step.toMillis() >= least)
                .findFirst()
                .orElse(STEPS.get(STEPS.size() - 1));
    }

    private String blocks() {
        StringBuilder line = new StringBuilder();
        PrinterState before = null;
        for (PrinterState state : cells) {
            if (state == null) {
                line.append(UNWATCHED);
            } else {
                line.append(state == before ? "" : colour(state)).append(BLOCK);
            }
            before = state;
        }
        return line.append(depth.reset()).toString();
    }

    private String colour(PrinterState state) {
        int rgb = Integer.parseInt(colours.get(state).substring(1), HEX);
        return depth.foreground((rgb >> 16 & 0xFF) / FULL, (rgb >> 8 & 0xFF) / FULL, (rgb & 0xFF) / FULL);
    }

    /** Without colours every cell has its letter, with colours only the first of each state. */
    private String letters() {
        StringBuilder line = new StringBuilder();
        PrinterState before = null;
        for (PrinterState state : cells) {
            boolean told = state != null && (depth == ColourDepth.PLAIN || state != before);
            line.append(told ? letter(state) : UNWATCHED);
            before = state;
        }
        return line.toString();
    }

    private static char letter(PrinterState state) {
        return switch (state) {
            case SILENT -> '.';
            case FAULT -> 'F';
            default -> state.word().charAt(0);
        };
    }

    private String legend() {
        Set<PrinterState> there = EnumSet.noneOf(PrinterState.class);
        boolean gaps = false;
        for (PrinterState state : cells) {
            if (state == null) {
                gaps = true;
            } else {
                there.add(state);
            }
        }
        List<String> words = new ArrayList<>();
        for (PrinterState state : there) {
            String block = depth == ColourDepth.PLAIN ? "" : colour(state) + BLOCK + depth.reset() + " ";
            words.add(block + letter(state) + " " + state.word());
        }
        if (gaps) {
            words.add("blank: lampwright did not run");
        }
        return String.join("   ", words);
    }
}
