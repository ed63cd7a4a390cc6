package dev.lampwright.demo;

import dev.lampwright.config.Config;
import dev.lampwright.engine.Daemon;
import dev.lampwright.engine.FrameReport;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import dev.lampwright.protocol.Frame;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/** What the demo shows in the terminal: a picture redrawn in place, or one plain line per second. */
final class Screen {
    /** Hides the cursor (DECTCEM), and disables line wrapping (DECAWM), which would shift the picture in a narrow terminal. */
    private static final String BEGIN = "\u001b[?25l\u001b[?7l";

    private static final String END = "\u001b[?7h\u001b[?25h";
    private static final String CLEAR_TO_END_OF_LINE = "\u001b[K";
    private static final long LIVE_NANOS = TimeUnit.MILLISECONDS.toNanos(50);
    private static final long PLAIN_NANOS = TimeUnit.SECONDS.toNanos(1);
    /** Frames are counted for this long before their rate is shown: over a shorter time, counting errors dominate. */
    private static final long RATE_NANOS = PLAIN_NANOS * 9 / 10;

    private static final double FULL_DUTY = 65_535;

    private final Config config;
    private final Daemon daemon;
    private final CheckingDisplay display;
    private final ColourDepth depth;
    private final StripPicture picture;
    private final long startNanos = System.nanoTime();
    private int linesDrawn;
    private long lastFrames;
    private long lastNanos = startNanos;
    private double framesPerSecond = Double.NaN;

    /**
     * Creates a screen that has drawn nothing.
     *
     * @param config the daemon's configuration
     * @param daemon the daemon to show
     * @param display the strip
     * @param depth colours of the terminal
     */
    Screen(Config config, Daemon daemon, CheckingDisplay display, ColourDepth depth) {
        this.config = config;
        this.daemon = daemon;
        this.display = display;
        this.depth = depth;
        picture = new StripPicture(config.setup().order(), depth);
        lastFrames = daemon.frames().snapshot().frames();
    }

    /**
     * The time between two pictures.
     *
     * @return ns
     */
    long pauseNanos() {
        return depth == ColourDepth.PLAIN ? PLAIN_NANOS : LIVE_NANOS;
    }

    /**
     * What to print first.
     *
     * @return text to print unchanged
     */
    String begin() {
        return depth == ColourDepth.PLAIN ? "" : BEGIN;
    }

    /**
     * What to print last.
     *
     * @return text to print unchanged
     */
    String end() {
        return depth == ColourDepth.PLAIN ? "" : END;
    }

    /**
     * The next picture.
     *
     * @return text to print unchanged
     */
    String next() {
        measureRate();
        FrameReport report = daemon.frames().snapshot();
        return depth == ColourDepth.PLAIN ? plain(report) : live(report);
    }

    /** The drawing comes last: a screen reader spells it out, and a listener can stop before it. */
    private String plain(FrameReport report) {
        return String.format(
                Locale.ROOT,
                "%5.1f s  %-8s  %s  %s  |%s|%n",
                (System.nanoTime() - startNanos) * 1e-9,
                report.state().word(),
                readings(),
                figures(report.current()),
                picture.of(display.shown().strip()));
    }

    private String live(FrameReport report) {
        Frame frame = display.shown();
        String strip = picture.of(frame.strip());
        List<String> lines = List.of(
                "",
                "  alder, an invented printer: real broker, real wire. Ctrl-C ends it.",
                "",
                "  " + strip,
                "  " + strip,
                "  " + legend(),
                "",
                "  " + report.state().word().toUpperCase(Locale.ROOT) + "   " + readings(),
                "  " + figures(report.current()) + workLight(frame),
                "");
        StringBuilder text = new StringBuilder();
        if (linesDrawn > 0) {
            text.append("\u001b[").append(linesDrawn).append('A');
        }
        for (String line : lines) {
            text.append('\r').append(line).append(CLEAR_TO_END_OF_LINE).append('\n');
        }
        linesDrawn = lines.size();
        return text.toString();
    }

    private String legend() {
        return "pixel 0" + " ".repeat(Math.max(1, config.setup().pixels() - 16)) + "pixel "
                + (config.setup().pixels() - 1);
    }

    private String readings() {
        PrinterStatus status = daemon.statuses().of(Statuses.UNNAMED);
        return "bed " + heat(status, Quantity.BED_ACTUAL, Quantity.BED_SETPOINT) + "  nozzle "
                + heat(status, Quantity.NOZZLE_ACTUAL, Quantity.NOZZLE_SETPOINT) + "  job "
                + number(status.value(Quantity.JOB_PROGRESS) * 100, "%3.0f %%");
    }

    private String figures(StripCurrent current) {
        return String.format(
                Locale.ROOT,
                "%s frames/s  %4d mA of %d mA",
                number(framesPerSecond, "%4.1f"),
                current.milliamps(),
                current.ceilingMilliamps());
    }

    private String workLight(Frame frame) {
        return frame.duties().length == 0
                ? ""
                : String.format(
                        Locale.ROOT,
                        "  %s light %3.0f %%",
                        config.fitting().dimmers().get(0).name(),
                        frame.duties()[0] / FULL_DUTY * 100);
    }

    private void measureRate() {
        long now = System.nanoTime();
        if (now - lastNanos >= RATE_NANOS) {
            long frames = daemon.frames().snapshot().frames();
            framesPerSecond = (frames - lastFrames) / ((now - lastNanos) * 1e-9);
            lastFrames = frames;
            lastNanos = now;
        }
    }

    private static String heat(PrinterStatus status, Quantity actual, Quantity target) {
        return number(status.value(actual), "%5.1f") + " / " + number(status.value(target), "%3.0f °C");
    }

    private static String number(double value, String format) {
        return Double.isNaN(value) ? "  ?" : String.format(Locale.ROOT, format, value);
    }
}
