package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Pressing;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.json.JsonObject;
import dev.lampwright.printer.PrinterState;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;

/**
 * The daemon's report on itself.
 *
 * @param version of the daemon
 * @param printers what each printer is doing, at least one
 * @param light what is shown
 * @param lines the state of the connections to controller and broker
 * @param framesPerSecond recent frame rate; NaN if not known yet
 * @param signals what light can follow, by name; NaN for unknown
 * @param units units of the signals whose names do not include them, by name; empty for a number without one
 * @param asked the asks in effect, and until when
 */
public record Report(
        String version,
        List<Printer> printers,
        Light light,
        Lines lines,
        double framesPerSecond,
        Map<String, Double> signals,
        Map<String, String> units,
        AskedFor asked) {
    private static final String PROGRESS = "job.progress";
    private static final String LEFT = "job.left_s";
    private static final String HEAT = ".heat";
    private static final String READY = ".ready_s";

    /**
     * What a printer is doing.
     *
     * @param name its name; empty if it is the only one and has none
     * @param state one word
     * @param silence why it counts as silent, in words; empty if it reports
     * @param alarm the state of the alarm
     * @param faultText the printer's own text about the fault; empty if there is none
     * @param look name of the look that shows it
     * @param progress completed share of its job, 0 to 1; NaN for unknown
     */
    public record Printer(
            String name,
            PrinterState state,
            String silence,
            AlarmState alarm,
            String faultText,
            String look,
            double progress) {
        /**
         * What the only printer is doing, which has no name.
         *
         * @param state as above
         * @param silence as above
         * @param alarm as above
         * @param faultText as above
         */
        public Printer(PrinterState state, String silence, AlarmState alarm, String faultText) {
            this("", state, silence, alarm, faultText, "", Double.NaN);
        }

        private JsonObject json() {
            return new JsonObject()
                    .put("state", state.word())
                    .putIfAny("silence", silence)
                    .put("alarm", alarm.word())
                    .putIfAny("fault_text", faultText)
                    .put("look", look);
        }

        private boolean differsInWord(Printer other) {
            return !name.equals(other.name)
                    || state != other.state
                    || alarm != other.alarm
                    || !silence.equals(other.silence)
                    || !faultText.equals(other.faultText)
                    || !look.equals(other.look);
        }
    }

    /**
     * What is being shown.
     *
     * @param look name of the current look
     * @param brightness share of the light that looks ask for
     * @param quiet whether light is dimmed for quiet hours
     * @param current what the last frame draws from the strip's supply, and its ceiling
     */
    public record Light(String look, double brightness, boolean quiet, StripCurrent current) {}

    /**
     * The state of the connections.
     *
     * @param controller to the controller, one word
     * @param lastReset what caused the controller's last start, one word; empty if it does not report that
     * @param broker to the broker, one word
     */
    public record Lines(String controller, String lastReset, String broker) {}

    /**
     * When a report was made, and what can be seen.
     *
     * @param at when, by the wall clock
     * @param page address of the live page for other machines; empty if none
     * @param strip six hexadecimal digits for each of a few colours along the strip; empty if they are not known
     */
    public record Sight(Instant at, String page, String strip) {}

    /** Keeps copies, in their order. */
    public Report {
        printers = List.copyOf(printers);
        signals = Collections.unmodifiableMap(new LinkedHashMap<>(signals));
        units = Collections.unmodifiableMap(new LinkedHashMap<>(units));
    }

    /**
     * Whether a signal is one of those that progress and time left are calculated from.
     *
     * @param name of the signal
     * @return true if {@link #progress} or {@link #leftSeconds} needs it
     */
    public static boolean isOutlined(String name) {
        return name.endsWith(PROGRESS) || name.endsWith(LEFT) || name.endsWith(HEAT) || name.endsWith(READY);
    }

    /**
     * The report as a message. Unknown values are left out.
     *
     * @param signature who reports
     * @param sight when, and what can be seen
     * @return a JSON object in one line
     */
    public String json(Signature signature, Sight sight) {
        JsonObject told = new JsonObject();
        signals.forEach((name, value) -> told.putRounded(name, value));
        JsonObject head = signature
                .json(true, version)
                .put("at", sight.at().truncatedTo(ChronoUnit.SECONDS).toString())
                .putIfAny("page", sight.page())
                .putIfAny("strip_rgb", sight.strip())
                .putRounded("progress", progress())
                .putRounded("left_s", Math.rint(leftSeconds()));
        return described(head)
                .putIfAny("signals", told)
                .putIfAny("units", unitsTold())
                .text();
    }

    /**
     * The report with every signal, unknown ones as null and none rounded.
     *
     * @return a JSON object to which more can be added
     */
    public JsonObject withExactSignals() {
        JsonObject exact = new JsonObject();
        signals.forEach((name, value) -> exact.put(name, value.doubleValue()));
        JsonObject head = new JsonObject().put("online", true).put("version", version);
        return described(head).put("signals", exact).putIfAny("units", unitsTold());
    }

    /**
     * The printer that needs attention most.
     *
     * @return one of {@link #printers}
     */
    public Printer printer() {
        return Collections.min(printers, Comparator.comparingInt(one -> Pressing.rank(one.alarm(), one.state())));
    }

    /** Each printer by its name; empty if the only one has none. */
    private JsonObject printersTold() {
        JsonObject told = new JsonObject();
        printers.stream().filter(one -> !one.name().isEmpty()).forEach(one -> {
            boolean heats = one.state() == PrinterState.WARMING;
            told.put(
                    one.name(),
                    one.json()
                            .putRounded("progress", heats ? progress(one) : one.progress())
                            .putRounded("left_s", Math.rint(leftSeconds(one))));
        });
        return told;
    }

    private JsonObject unitsTold() {
        JsonObject told = new JsonObject();
        units.forEach(told::put);
        return told;
    }

    /**
     * Progress of the job, or of the heat-up before it, of the printer that needs a person most.
     *
     * @return 0 to 1; NaN if unknown or meaningless
     */
    public double progress() {
        return progress(printer());
    }

    /**
     * Progress of a printer's job, or of the heat-up before it.
     *
     * @param printer one of {@link #printers}
     * @return 0 to 1; NaN if it is not known, or means nothing
     */
    public double progress(Printer printer) {
        return switch (printer.state()) {
            case PRINTING, HELD -> signal(printer, PROGRESS);
            case WARMING -> known(printer, HEAT).average().orElse(Double.NaN);
            default -> Double.NaN;
        };
    }

    /**
     * Time until the heat-up, or the job, is over, of the printer that needs a person most.
     *
     * @return s; NaN if unknown
     */
    public double leftSeconds() {
        return leftSeconds(printer());
    }

    /**
     * Time until a printer's heat-up, or its job, is over.
     *
     * @param printer one of {@link #printers}
     * @return s; NaN if it is not known
     */
    public double leftSeconds(Printer printer) {
        return switch (printer.state()) {
            case PRINTING -> signal(printer, LEFT);
            case WARMING -> known(printer, READY).max().orElse(Double.NaN);
            default -> Double.NaN;
        };
    }

    private double signal(Printer printer, String name) {
        return signals.getOrDefault(prefix(printer) + name, Double.NaN);
    }

    /** The prefix of the names of a printer's signals. */
    private static String prefix(Printer printer) {
        return printer.name().isEmpty() ? "" : printer.name() + '.';
    }

    private DoubleStream known(Printer printer, String measure) {
        String prefix = prefix(printer);
        return signals.entrySet().stream()
                .filter(signal ->
                        signal.getKey().startsWith(prefix) && signal.getKey().endsWith(measure))
                .mapToDouble(Map.Entry::getValue)
                .filter(Double::isFinite);
    }

    private JsonObject described(JsonObject head) {
        Printer first = printer();
        JsonObject json = head.put("state", first.state().word())
                .putIfAny("silence", first.silence())
                .put("alarm", first.alarm().word())
                .putIfAny("fault_text", first.faultText())
                .putIfAny("printers", printersTold())
                .put("look", light.look())
                .putRounded("brightness", light.brightness())
                .put("quiet", light.quiet())
                .put("strip_mA", light.current().milliamps())
                .put("ceiling_mA", light.current().ceilingMilliamps())
                .put("link", lines.controller())
                .putIfAny("controller_last_reset", lines.lastReset())
                .put("broker", lines.broker())
                .putRounded("frames_per_s", framesPerSecond)
                .put("asked", asked.json());
        return asked.more() == 0 ? json : json.put("asked_more", asked.more());
    }

    /**
     * The last will: what the broker reports once the daemon is gone.
     *
     * @param version of the daemon
     * @param why it is gone, one word
     * @param signature who reported
     * @return a JSON object in one line
     */
    public static String gone(String version, String why, Signature signature) {
        return signature.json(false, version).put("why", why).text();
    }

    /**
     * Whether another report differs in something that matters to people at once, rather than in numbers that change all the time.
     *
     * @param other a report
     * @return true if it should be published immediately
     */
    public boolean differsInWord(Report other) {
        return printersDiffer(other)
                || !asked.sameAs(other.asked)
                || !lines.equals(other.lines)
                || !light.look().equals(other.light.look())
                || light.brightness() != other.light.brightness()
                || light.quiet() != other.light.quiet()
                || light.current().ceilingMilliamps() != other.light.current().ceilingMilliamps();
    }

    private boolean printersDiffer(Report other) {
        if (printers.size() != other.printers.size()) {
            return true;
        }
        for (int i = 0; i < printers.size(); i++) {
            if (printers.get(i).differsInWord(other.printers.get(i))) {
                return true;
            }
        }
        return false;
    }
}
