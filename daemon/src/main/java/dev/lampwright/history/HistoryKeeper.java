package dev.lampwright.history;

import dev.lampwright.file.KeptFile;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.upkeep.Hands;
import dev.lampwright.upkeep.Worker;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Records the daemon in a logbook once a second, as {@code history}, and keeps that in a file. Events in between are passed in
 * by other threads, which never wait: of more than {@link #MOST_NOTED} within a second, the oldest are lost.
 *
 * <p>To spare memory cards, the file is written as a whole 10 s after something has happened, every half hour for the curves, and at the
 * end; but no more than {@link #BYTES_PER_DAY}, of which {@link #BYTES_SAVED} can be saved up.
 */
public final class HistoryKeeper implements AutoCloseable {
    /** The maximum number of events within a second. */
    static final int MOST_NOTED = 256;

    /** The maximum written per day, in bytes. */
    static final long BYTES_PER_DAY = 16 << 20;

    /** How much of that can be saved up, in bytes. */
    static final long BYTES_SAVED = 1 << 20;

    static final long SHORTEST_PAUSE_MILLIS = 10_000;
    static final long CURVES_EVERY_MILLIS = 30 * 60_000L;

    private static final Logger LOG = LoggerFactory.getLogger(HistoryKeeper.class);
    private static final Duration LOOK_EVERY = Duration.ofSeconds(1);
    private static final Duration LAST_WRITE = Duration.ofMillis(500);

    private final Optional<KeptFile> file;
    private final Supplier<Map<String, Glance>> glances;
    private final HistoryClock clock;
    /** By the name of the printer. */
    private final Map<String, Logbook> logbooks = new LinkedHashMap<>();

    private final WriteBudget budget;
    private final BlockingQueue<Noted> noted = new ArrayBlockingQueue<>(MOST_NOTED);
    private final Worker worker;
    private final Map<String, PrinterState> told = new HashMap<>();
    private boolean restored;
    private boolean keep;
    private long writtenChanges;
    private long writtenMillis;
    private long triedMillis;

    /** An event, and its time, in ns. */
    private record Noted(long nanos, LongConsumer taking) {}

    /** The text to write, how much of the history it contains, and when it was made. */
    private record Text(String text, long changes, long millis) {}

    /**
     * Creates a keeper that keeps nothing yet.
     *
     * @param file where to keep it, if {@link #follow} says so; empty for memory only
     * @param glances provides what can be seen of the daemon, by the names of the printers; called on the keeper's thread
     * @param clock the clocks
     */
    HistoryKeeper(Optional<Path> file, Supplier<Map<String, Glance>> glances, HistoryClock clock) {
        this(file, glances, clock, Hands.ofItsOwn());
    }

    /**
     * Creates a keeper that keeps nothing yet.
     *
     * @param file where to keep it, if {@link #follow} says so; empty for memory only
     * @param glances provides what can be seen of the daemon, by the names of the printers; called by the hands
     * @param clock the clocks
     * @param hands who does the work
     */
    public HistoryKeeper(Optional<Path> file, Supplier<Map<String, Glance>> glances, HistoryClock clock, Hands hands) {
        worker = new Worker(hands, "history", LOOK_EVERY, this::look, this::lookForTheLastTime);
        this.file = file.map(path -> new KeptFile(path, LOG, "the history", "what happened before"));
        this.glances = glances;
        this.clock = clock;
        writtenMillis = clock.millis();
        triedMillis = writtenMillis - SHORTEST_PAUSE_MILLIS;
        budget = new WriteBudget(BYTES_PER_DAY, BYTES_SAVED, writtenMillis);
    }

    /** Starts the work, which first restores what an earlier run has kept, so that nothing else waits for it. */
    public void start() {
        worker.start();
    }

    /**
     * Starts or stops keeping the history in the file; what is in the file stays.
     *
     * @param wanted whether the configuration says so
     */
    public synchronized void follow(boolean wanted) {
        keep = wanted;
    }

    /**
     * Records that a printer is doing something new. For any thread; never waits.
     *
     * @param printer its name
     * @param seen what it is doing it is doing
     */
    public void saw(String printer, Sighting seen) {
        note(millis -> {
            told.put(printer, seen.state());
            logbook(printer).see(millis, seen);
        });
    }

    private Logbook logbook(String printer) {
        return logbooks.computeIfAbsent(printer, any -> new Logbook());
    }

    /**
     * Records that somebody has acknowledged a fault. For any thread; never waits.
     *
     * @param printer name of the printer
     * @param way how the ask came: {@code page} or {@code mqtt}; empty if unknown
     * @param from the address from which the page was used; empty if none
     * @param by the asker's name; empty if none was given
     */
    public void acknowledged(String printer, String way, String from, String by) {
        note(millis -> logbook(printer).acknowledge(new Acknowledgement(new Stamp(millis, true), way, from, by)));
    }

    private void note(LongConsumer taking) {
        Noted one = new Noted(clock.nanos(), taking);
        while (!noted.offer(one)) {
            noted.poll();
        }
    }

    /**
     * What has happened.
     *
     * @return as of now
     */
    public synchronized Accounts accounts() {
        take();
        return all();
    }

    private Accounts all() {
        Map<String, Account> accounts = new LinkedHashMap<>();
        logbooks.forEach((printer, logbook) -> accounts.put(printer, logbook.account()));
        Instant asOf = accounts.values().stream()
                .map(Account::asOf)
                .max(Comparator.naturalOrder())
                .orElseGet(() -> Instant.ofEpochMilli(clock.wallMillis()));
        return new Accounts(asOf, accounts);
    }

    private long changes() {
        return logbooks.values().stream().mapToLong(Logbook::changes).sum();
    }

    /** Ends the work without waiting for it; it writes one last time. */
    public void end() {
        worker.end(Duration.ZERO);
    }

    /** Waits until the work has ended, half a second at most. */
    @Override
    public void close() {
        worker.end(LAST_WRITE);
    }

    /** Runs one check, as started by {@link #start} every second. For one thread. */
    void look() {
        textIfDue().ifPresent(this::write);
    }

    private void lookForTheLastTime() {
        text().ifPresent(this::write);
    }

    private synchronized Optional<Text> textIfDue() {
        take();
        long now = clock.millis();
        boolean happened = changes() != writtenChanges;
        boolean due = happened || now - writtenMillis >= CURVES_EVERY_MILLIS;
        boolean may = now - triedMillis >= SHORTEST_PAUSE_MILLIS && budget.allows(now);
        return due && may ? text() : Optional.empty();
    }

    private synchronized Optional<Text> text() {
        take();
        return keep && file.isPresent()
                ? Optional.of(new Text(HistoryText.of(all()), changes(), clock.millis()))
                : Optional.empty();
    }

    /** Does not block callers in the meantime. */
    private void write(Text text) {
        boolean written = file.orElseThrow().write(text.text(), clock.nanos());
        noteWriting(text, written);
    }

    private synchronized void noteWriting(Text text, boolean written) {
        triedMillis = text.millis();
        budget.spend(text.text().getBytes(StandardCharsets.UTF_8).length);
        if (written) {
            writtenChanges = text.changes();
            writtenMillis = text.millis();
        }
    }

    private void restore() {
        if (!restored) {
            restored = true;
            file.ifPresent(kept -> kept.restore(text -> HistoryText.read(text)
                    .byPrinter()
                    .forEach((printer, account) -> logbook(printer).restore(account))));
        }
    }

    private void take() {
        restore();
        long nowMillis = clock.millis();
        long nowNanos = clock.nanos();
        Map<String, Glance> seen = glances.get();
        seen.keySet().forEach(this::logbook);
        long wallAhead = clock.wallMillis() - nowMillis;
        logbooks.values().forEach(logbook -> logbook.wallAhead(wallAhead));
        for (Noted one = noted.poll(); one != null; one = noted.poll()) {
            one.taking().accept(nowMillis - TimeUnit.NANOSECONDS.toMillis(nowNanos - one.nanos()));
        }
        forgetOldNames(seen.keySet());
        seen.forEach((printer, glance) -> look(printer, glance, nowMillis));
    }

    /** A file with more names in it could not be read again. */
    private void forgetOldNames(Set<String> used) {
        Iterator<String> names = logbooks.keySet().iterator();
        while (logbooks.size() > HistoryText.MOST_PRINTERS && names.hasNext()) {
            if (!used.contains(names.next())) {
                names.remove();
            }
        }
    }

    private void look(String printer, Glance glance, long nowMillis) {
        Logbook logbook = logbook(printer);
        PrinterState known = told.getOrDefault(printer, PrinterState.SILENT);
        PrinterState state = glance.silent() ? PrinterState.SILENT : known;
        logbook.see(nowMillis, new Sighting(state, glance.faultText(), glance.progress()));
        logbook.measure(glance.bedC(), glance.nozzleC(), glance.milliamps());
        if (!glance.alarm()) {
            logbook.alarmIsOff();
        }
    }
}
