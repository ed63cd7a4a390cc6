package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.config.PrinterLight;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.OtherClock;
import dev.lampwright.printer.StatusLines.Entry;
import dev.lampwright.printer.Statuses;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * A printer as it was recorded, from some time on and at some speed. Its signals follow every message, by the clock of the recording; looks
 * move by that of the film.
 */
final class RecordedPrinter implements FilmPrinter {
    /** The lowest speed. */
    static final double SLOWEST = 0.1;
    /** The highest: an hour in a second. */
    static final double FASTEST = 3600;

    private static final double LATEST_S = 1e7;
    private static final double NANOS = TimeUnit.SECONDS.toNanos(1);
    private static final Duration NEVER_SILENT = Duration.ofDays(365);

    private final Recordings.Reel reel;
    private final double atSeconds;
    private final double speed;
    private final OtherClock clock;
    private final List<String> printers;
    private Statuses statuses = Statuses.NOTHING_HEARD;
    private long heardNanos;
    private Optional<Entry> next;

    private RecordedPrinter(
            LightSpec light, Recordings.Reel reel, double atSeconds, double speed, Optional<Entry> first) {
        this.reel = reel;
        this.atSeconds = atSeconds;
        this.speed = speed;
        clock = new OtherClock(light);
        printers = light.printers().stream().map(PrinterLight::name).toList();
        next = first;
    }

    /**
     * Opens a recording.
     *
     * @param recordings what there is
     * @param config whose printers
     * @param body {@code id}, {@code at_s}, {@code speed}
     */
    static RecordedPrinter of(Recordings recordings, Config config, BenchBody body) throws BenchRefusal {
        String id = body.text("id");
        double at = body.number("at_s", 0, LATEST_S, 0);
        double speed = body.number("speed", SLOWEST, FASTEST, 1);
        LightSpec light = Recordings.hasGaps(id) ? config.light().silentAfter(NEVER_SILENT) : config.light();
        Recordings.Reel reel = recordings.open(id);
        try {
            return new RecordedPrinter(light, reel, at, speed, reel.next());
        } catch (IOException e) {
            close(reel);
            throw Recordings.bad(e);
        }
    }

    @Override
    public Chain chain(Config config, LightSpec light, int rate) {
        return Chain.of(config.setup(), light, rate);
    }

    @Override
    public long startNanos() {
        return 0;
    }

    @Override
    public Statuses at(Chain chain, double seconds, long nanos, DrawPatience patience) throws BenchRefusal {
        long recorded = Math.max(heardNanos, Math.round((atSeconds + seconds * speed) * NANOS));
        hearUntil(recorded, patience);
        heardNanos = recorded;
        return clock.show(chain, recorded, nanos);
    }

    private void hearUntil(long recorded, DrawPatience patience) throws BenchRefusal {
        try {
            while (next.isPresent() && next.get().atNanos() <= recorded) {
                patience.check();
                hear(next.get());
                next = reel.next();
            }
        } catch (IOException e) {
            throw Recordings.bad(e);
        }
    }

    /** A message that names no printer is about all of them. */
    private void hear(Entry message) {
        List<String> meant = message.printer().isEmpty() ? printers : List.of(message.printer());
        for (String printer : meant) {
            statuses = statuses.with(printer, message.status());
        }
        heardNanos = Math.max(heardNanos, message.atNanos());
        clock.hear(statuses, heardNanos);
    }

    @Override
    public void close() throws BenchRefusal {
        close(reel);
    }

    private static void close(Recordings.Reel reel) throws BenchRefusal {
        try {
            reel.close();
        } catch (IOException e) {
            throw Recordings.bad(e);
        }
    }
}
