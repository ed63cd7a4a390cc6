package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.guard.StripCurrent;
import dev.lampwright.json.JsonObject;
import dev.lampwright.printer.PrinterState;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the daemon reports of itself.
 *
 * @param version of the daemon
 * @param printer what the printer is doing
 * @param light what is shown
 * @param lines how the lines to controller and broker are doing
 * @param framesPerSecond rate of the frames of late; NaN if it is not known yet
 * @param signals what light can follow, by name; NaN for unknown
 * @param units units of the signals whose names do not tell them, by name; empty for a number without one
 * @param asked what people have asked for, and until when
 */
public record Report(
        String version,
        Printer printer,
        Light light,
        Lines lines,
        double framesPerSecond,
        Map<String, Double> signals,
        Map<String, String> units,
        AskedFor asked) {
    /**
     * What the printer is doing.
     *
     * @param state in a word
     * @param silence why nothing is heard of it, in words; empty if it is heard
     * @param alarm the state of the alarm
     * @param faultText what the printer says in its own words about the fault; empty if there is none, or it does not say
     */
    public record Printer(PrinterState state, String silence, AlarmState alarm, String faultText) {}

    /**
     * What is shown.
     *
     * @param look name of the look that is on
     * @param brightness share of the light that looks ask for
     * @param quiet whether light is dimmed for the night
     * @param current what the last frame takes from the strip's supply, and the most that it may take
     */
    public record Light(String look, double brightness, boolean quiet, StripCurrent current) {}

    /**
     * How the lines are doing.
     *
     * @param controller that to the controller, in a word
     * @param lastReset what made the controller start last, in a word; empty if it does not tell
     * @param broker that to the broker, in a word
     */
    public record Lines(String controller, String lastReset, String broker) {}

    /** Keeps copies of the maps, in their order. */
    public Report {
        signals = Collections.unmodifiableMap(new LinkedHashMap<>(signals));
        units = Collections.unmodifiableMap(new LinkedHashMap<>(units));
    }

    /**
     * The report as a message. What is not known is left out.
     *
     * @return a JSON object in one line
     */
    public String json() {
        JsonObject told = new JsonObject();
        signals.forEach((name, value) -> told.putRounded(name, value));
        return described()
                .putIfAny("signals", told)
                .putIfAny("units", unitsTold())
                .text();
    }

    /**
     * The report with every signal, unknown ones as null and none rounded.
     *
     * @return a JSON object to which more may be put
     */
    public JsonObject withExactSignals() {
        JsonObject exact = new JsonObject();
        signals.forEach((name, value) -> exact.put(name, value.doubleValue()));
        return described().put("signals", exact).putIfAny("units", unitsTold());
    }

    private JsonObject unitsTold() {
        JsonObject told = new JsonObject();
        units.forEach(told::put);
        return told;
    }

    private JsonObject described() {
        JsonObject json = new JsonObject()
                .put("online", true)
                .put("version", version)
                .put("state", printer.state().word())
                .putIfAny("silence", printer.silence())
                .put("alarm", printer.alarm().word())
                .putIfAny("fault_text", printer.faultText())
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
     * What is told in the daemon's place once it is gone.
     *
     * @param version of the daemon
     * @param why it is gone, in a word
     * @return a JSON object in one line
     */
    public static String gone(String version, String why) {
        return new JsonObject()
                .put("online", false)
                .put("why", why)
                .put("version", version)
                .text();
    }

    /**
     * Whether another report tells something that people look out for, rather than numbers that change all the time.
     *
     * @param other a report
     * @return true if it should be told at once
     */
    public boolean differsInWord(Report other) {
        return !printer.equals(other.printer)
                || !asked.sameAs(other.asked)
                || !lines.equals(other.lines)
                || !light.look().equals(other.light.look())
                || light.brightness() != other.light.brightness()
                || light.quiet() != other.light.quiet()
                || light.current().ceilingMilliamps() != other.light.current().ceilingMilliamps();
    }
}
