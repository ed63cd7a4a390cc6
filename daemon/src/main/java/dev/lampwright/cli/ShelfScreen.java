package dev.lampwright.cli;

import dev.lampwright.broker.BrokerState;
import dev.lampwright.demo.ColourDepth;
import dev.lampwright.shelf.Shelf;
import dev.lampwright.shelf.ShelfRow;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;

/** The shelf in the terminal: drawn in one place, whenever it has changed. */
final class ShelfScreen implements AutoCloseable {
    /** Hides the cursor (DECTCEM), and disables line wrapping (DECAWM). */
    private static final String BEGIN = "\u001b[?25l\u001b[?7l";

    private static final String END = "\u001b[?7h\u001b[?25h";
    private static final String CLEAR_TO_END_OF_LINE = "\u001b[K";
    private static final String CLEAR_BELOW = "\u001b[J";
    private static final long DRAW_EVERY_NANOS = 500_000_000;
    /** Summary, places, and the line of the cursor. */
    private static final int OTHER_LINES = 4;

    private static final int FEWEST_LINES = 3;

    private final PrintWriter out;
    private final Shelf shelf;
    private final int levels;
    private final ColourDepth depth;
    private volatile TerminalSize size = TerminalSize.now();
    private long nextNanos = System.nanoTime();
    private List<String> drawn = List.of();

    /**
     * Starts with nothing drawn.
     *
     * @param out the terminal
     * @param shelf what is shown
     * @param levels how many levels of prefixes are searched
     * @param depth colours of the terminal
     */
    ShelfScreen(PrintWriter out, Shelf shelf, int levels, ColourDepth depth) {
        this.out = out;
        this.shelf = shelf;
        this.levels = levels;
        this.depth = depth;
        ProcessSignal.on("WINCH", () -> size = TerminalSize.now());
        out.print(BEGIN);
    }

    /** Draws, if it is time. */
    void look(BrokerState broker) {
        long now = System.nanoTime();
        if (now - nextNanos >= 0) {
            nextNanos = now + DRAW_EVERY_NANOS;
            draw(lines(shelf.rows(now), broker, size));
        }
    }

    private List<String> lines(List<ShelfRow> rows, BrokerState broker, TerminalSize now) {
        List<String> lines = new ArrayList<>();
        boolean connected = broker.phase() == BrokerState.Phase.CONNECTED;
        lines.add(connected ? ShelfTable.summary(rows) : deaf(rows) + why(broker));
        lines.add("");
        lines.addAll(
                new ShelfTable(depth, now.columns()).lines(rows, Math.max(FEWEST_LINES, now.lines() - OTHER_LINES)));
        lines.add(ShelfTable.places(rows, levels) + " Ctrl-C ends it.");
        return lines;
    }

    private static String deaf(List<ShelfRow> rows) {
        return rows.isEmpty() ? "waiting for the broker" : "as last heard; no connection to the broker";
    }

    private static String why(BrokerState broker) {
        return broker.reason().isEmpty() ? "" : ": " + broker.reason();
    }

    private void draw(List<String> lines) {
        if (lines.equals(drawn)) {
            return;
        }
        StringBuilder text = new StringBuilder(erasing());
        lines.forEach(line ->
                text.append('\r').append(line).append(CLEAR_TO_END_OF_LINE).append('\n'));
        text.append(CLEAR_BELOW);
        drawn = lines;
        out.print(text);
        out.flush();
    }

    private String erasing() {
        return drawn.isEmpty() ? "" : "\u001b[" + drawn.size() + 'A';
    }

    /** Restores the terminal; the last drawing stays. */
    @Override
    public void close() {
        out.print(END);
        out.flush();
    }
}
