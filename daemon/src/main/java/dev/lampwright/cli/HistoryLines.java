package dev.lampwright.cli;

import dev.lampwright.history.Acknowledgement;
import dev.lampwright.history.JobEnd;
import dev.lampwright.history.PastFault;
import dev.lampwright.history.PastJob;
import dev.lampwright.history.Stamp;
import java.time.Duration;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Jobs and faults as tables of text, the newest last. Times are local, dates in ISO 8601 format. */
final class HistoryLines {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);
    private static final String MARGIN = "  ";
    private static final int MINUTES = 60;
    private static final int HOURS = 24;

    private final ZoneId zone;

    /**
     * Creates one for a time zone.
     *
     * @param zone the local time zone
     */
    HistoryLines(ZoneId zone) {
        this.zone = zone;
    }

    /** The jobs; one line that says so if there are none. */
    List<String> jobs(List<PastJob> jobs) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("began", "took", "ended"));
        jobs.forEach(job -> rows.add(List.of(time(job.began()), took(job), end(job))));
        return jobs.isEmpty() ? List.of(MARGIN + "none") : table(rows);
    }

    /** The same for faults. */
    List<String> faults(List<PastFault> faults) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("began", "lasted", "acknowledged", "the printer's words"));
        faults.forEach(fault -> rows.add(List.of(
                time(fault.began()),
                lasted(fault),
                fault.acknowledged().map(this::acknowledged).orElse("by nobody"),
                fault.words().isEmpty() ? "none" : fault.words())));
        return faults.isEmpty() ? List.of(MARGIN + "none") : table(rows);
    }

    /** A time with its date. */
    String time(Stamp stamp) {
        return MINUTE.format(stamp.instant().atZone(zone));
    }

    private static String took(PastJob job) {
        String took = duration(job.took());
        if (job.end() == JobEnd.RUNNING) {
            return took + " so far";
        }
        boolean longer = job.beganUnseen() || job.end() == JobEnd.UNSEEN;
        boolean shorter = job.endUnseen() && job.end() != JobEnd.UNSEEN;
        if (longer && shorter) {
            return "about " + took;
        }
        return (longer ? "at least " : shorter ? "at most " : "") + took;
    }

    private static String end(PastJob job) {
        String done = Double.isNaN(job.progress()) ? "" : Math.round(job.progress() * 100) + " %";
        String at = done.isEmpty() ? "" : " at " + done;
        return switch (job.end()) {
            case RUNNING -> job.state().word() + at;
            case DONE -> "done" + (job.endUnseen() ? ", its end was not seen" : "");
            case STOPPED -> "stopped" + at;
            case FAULT -> "fault" + at;
            case UNTOLD -> "ended" + at + ", the printer did not report how";
            case UNSEEN -> "not seen to its end" + (done.isEmpty() ? "" : ", last seen at " + done);
        };
    }

    private static String lasted(PastFault fault) {
        if (fault.over().isEmpty()) {
            return "ongoing";
        }
        long millis = fault.over().get().millis() - fault.began().millis();
        return (fault.overUnseen() ? "at most " : "") + duration(Duration.ofMillis(Math.max(0, millis)));
    }

    private String acknowledged(Acknowledgement one) {
        return time(one.at()) + " " + one.who();
    }

    /** A time in its two largest units. */
    static String duration(Duration time) {
        if (time.toMinutes() == 0) {
            return time.toSeconds() + " s";
        }
        if (time.toHours() == 0) {
            return time.toMinutes() + " min";
        }
        if (time.toDays() == 0) {
            return "%d h %02d min".formatted(time.toHours(), time.toMinutes() % MINUTES);
        }
        return "%d d %02d h".formatted(time.toDays(), time.toHours() % HOURS);
    }

    private static List<String> table(List<List<String>> rows) {
        int columns = rows.get(0).size();
        int[] widths = new int[columns];
        for (List<String> row : rows) {
            for (int i = 0; i < columns; i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < columns; i++) {
                line.append(MARGIN)
                        .append(row.get(i))
                        .append(" ".repeat(widths[i] - row.get(i).length()));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }
}
