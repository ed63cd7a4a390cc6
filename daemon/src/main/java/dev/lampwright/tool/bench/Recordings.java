package dev.lampwright.tool.bench;

import dev.lampwright.engine.Daemon;
import dev.lampwright.history.Account;
import dev.lampwright.history.PastJob;
import dev.lampwright.printer.StatusLines.Entry;
import dev.lampwright.tool.replay.JobPast;
import dev.lampwright.tool.replay.StatusReel;
import dev.lampwright.tool.replay.Timeline;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * What a preview can replay: jobs that the daemon remembers, the recording that it is writing, uploads, and an invented job. Uploads are
 * kept in memory, few and small. Safe for many threads.
 */
final class Recordings {
    /** The longest that is uploaded, in bytes. */
    static final int LONGEST = 262_144;
    /** How many are uploaded at most. */
    static final int MOST = 3;

    private static final int MOST_JOBS = 20;
    private static final String EXAMPLE = "example";
    private static final String RUN = "run";
    private static final String JOB = "job-";
    private static final double NANOS = TimeUnit.SECONDS.toNanos(1);

    private final Daemon daemon;
    private final Optional<Path> recorded;
    private final Map<String, Upload> uploads = new LinkedHashMap<>();

    /** Messages one after the other. */
    interface Reel extends AutoCloseable {
        Optional<Entry> next() throws IOException;

        @Override
        void close() throws IOException;
    }

    private record Upload(String text, double seconds, long atMillis) {}

    /**
     * Finds them.
     *
     * @param daemon whose history
     * @param recorded the file that it writes with {@code --record}; empty if it does not
     */
    Recordings(Daemon daemon, Optional<Path> recorded) {
        this.daemon = daemon;
        this.recorded = recorded;
    }

    /** All of them, the newest job first, and how much can be uploaded. */
    Map<String, Object> all() {
        List<Map<String, Object>> all = new ArrayList<>();
        recorded.filter(Files::exists).ifPresent(file -> all.add(ofRun(file)));
        List<Job> jobs = jobs();
        for (int i = 0; i < Math.min(MOST_JOBS, jobs.size()); i++) {
            all.add(jobs.get(i).told());
        }
        synchronized (this) {
            uploads.forEach((name, upload) ->
                    all.add(told(name, "upload", name, upload.seconds(), Optional.of(upload.atMillis()))));
        }
        all.add(told(EXAMPLE, EXAMPLE, EXAMPLE, Timeline.example().seconds(), Optional.empty()));
        return Map.of("recordings", all, "limits", limits());
    }

    private static Map<String, Object> limits() {
        return Map.of(
                "bytes",
                LONGEST,
                "uploads",
                MOST,
                "speed_low",
                RecordedPrinter.SLOWEST,
                "speed_high",
                RecordedPrinter.FASTEST);
    }

    private static Map<String, Object> told(
            String id, String from, String name, double seconds, Optional<Long> atMillis) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("id", id);
        told.put("from", from);
        told.put("name", name);
        told.put("at_ms", atMillis.orElse(null));
        told.put("seconds", seconds);
        told.put("printer", "");
        told.put("end", "");
        return told;
    }

    private static Map<String, Object> ofRun(Path file) {
        double seconds = RecordingEnd.seconds(file);
        long written = file.toFile().lastModified();
        return told(
                RUN,
                RUN,
                String.valueOf(file.getFileName()),
                seconds,
                Optional.of(written - Math.round(seconds * 1000)));
    }

    /** A job of the history. */
    private record Job(String printer, Account account, PastJob job) {
        String id() {
            return JOB + job.began().millis() + (printer.isEmpty() ? "" : "-" + printer);
        }

        Map<String, Object> told() {
            Map<String, Object> told = Recordings.told(
                    id(),
                    "history",
                    "",
                    job.took().toMillis() / 1000.0,
                    Optional.of(job.began().millis()));
            told.put("printer", printer);
            told.put("end", job.end().word());
            return told;
        }
    }

    /** The newest first. */
    private List<Job> jobs() {
        List<Job> jobs = new ArrayList<>();
        daemon.history()
                .byPrinter()
                .forEach((printer, account) -> account.jobs().forEach(job -> jobs.add(new Job(printer, account, job))));
        jobs.sort((one, other) ->
                Long.compare(other.job().began().millis(), one.job().began().millis()));
        return jobs;
    }

    /**
     * Keeps an upload; it replaces one of the same name.
     *
     * @param name what to call it
     * @param text lines as {@code run --record} writes them
     * @return its {@code id} and {@code seconds}
     */
    synchronized Map<String, Object> keep(String name, String text) throws BenchRefusal {
        BenchLook.requireName(name);
        if (name.equals(EXAMPLE) || name.equals(RUN) || name.startsWith(JOB)) {
            throw new BenchRefusal(
                            409, "recording_name", "there is a recording " + name + " already; choose another name")
                    .with("name", name);
        }
        if (text.getBytes(StandardCharsets.UTF_8).length > LONGEST) {
            throw new BenchRefusal(
                            413,
                            "recording_too_long",
                            "the recording is longer than " + LONGEST + " bytes; upload a part of it")
                    .with("bytes", LONGEST);
        }
        if (!uploads.containsKey(name) && uploads.size() >= MOST) {
            throw new BenchRefusal(
                            409,
                            "too_many_recordings",
                            MOST + " recordings are uploaded already; remove one of them first")
                    .with("most", MOST);
        }
        double seconds = seconds(text);
        uploads.put(name, new Upload(text, seconds, System.currentTimeMillis()));
        return Map.of("done", true, "id", name, "seconds", seconds);
    }

    private static double seconds(String text) throws BenchRefusal {
        try (StatusReel reel = StatusReel.of(text)) {
            double seconds = Double.NaN;
            for (Optional<Entry> entry = reel.next(); entry.isPresent(); entry = reel.next()) {
                seconds = entry.get().atNanos() / NANOS;
            }
            if (Double.isNaN(seconds)) {
                throw bad(1, "no message is here or below; give lines as run --record writes them");
            }
            return seconds;
        } catch (IOException e) {
            throw bad(e);
        }
    }

    /** That a recording cannot be read. */
    static BenchRefusal bad(IOException e) {
        return bad(e instanceof StatusReel.BadLineException bad ? bad.line() : 0, e.getMessage());
    }

    private static BenchRefusal bad(int line, String what) {
        return new BenchRefusal(422, "bad_recording", "line " + line + " of the recording: " + what)
                .with("line", line)
                .with("what", what);
    }

    /** Forgets an upload; nothing happens if there is none. */
    synchronized Map<String, Object> discard(String name) {
        uploads.remove(name);
        return Map.of("done", true);
    }

    /** Opens one at its beginning. */
    Reel open(String id) throws BenchRefusal {
        try {
            if (id.equals(EXAMPLE)) {
                return reel(Timeline.example().entries().iterator());
            }
            if (id.equals(RUN) && recorded.isPresent()) {
                return reel(StatusReel.of(recorded.get()));
            }
        } catch (IOException e) {
            throw bad(e);
        }
        Optional<Job> job = id.startsWith(JOB)
                ? jobs().stream().filter(one -> one.id().equals(id)).findFirst()
                : Optional.empty();
        if (job.isPresent()) {
            return reel(JobPast.entries(
                            job.get().account(), job.get().job(), job.get().printer())
                    .iterator());
        }
        return reel(StatusReel.of(upload(id)));
    }

    /** Whether messages are missing from one, so that a quiet printer is not a silent one. */
    static boolean hasGaps(String id) {
        return id.startsWith(JOB);
    }

    private synchronized String upload(String id) throws BenchRefusal {
        if (!uploads.containsKey(id)) {
            throw new BenchRefusal(404, "no_recording", "there is no recording " + id).with("name", id);
        }
        return uploads.get(id).text();
    }

    private static Reel reel(StatusReel reel) {
        return new Reel() {
            @Override
            public Optional<Entry> next() throws IOException {
                return reel.next();
            }

            @Override
            public void close() throws IOException {
                reel.close();
            }
        };
    }

    private static Reel reel(Iterator<Entry> entries) {
        return new Reel() {
            @Override
            public Optional<Entry> next() {
                return entries.hasNext() ? Optional.of(entries.next()) : Optional.empty();
            }

            @Override
            public void close() {
                // There is nothing to close.
            }
        };
    }
}
