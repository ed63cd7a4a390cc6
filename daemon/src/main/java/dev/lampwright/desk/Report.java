package dev.lampwright.desk;

import dev.lampwright.cue.AlarmState;
import dev.lampwright.json.JsonObject;
import dev.lampwright.printer.PrinterState;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What the daemon tells of itself.
 *
 * @param version of the daemon
 * @param state what the printer is doing
 * @param silence why nothing is heard of it, in words; empty if it is heard
 * @param alarm where the alarm stands
 * @param faultText what the printer says in its own words about the fault; empty if there is none, or it does not say
 * @param look name of the look that is on
 * @param brightness share of the light that looks ask for
 * @param quiet whether light is dimmed for the night
 * @param milliamps what the last frame takes from the strip's supply
 * @param ceilingMilliamps the most that it may take
 * @param link how the line to the controller does, in a word
 * @param broker how the line to the broker does, in a word
 * @param framesPerSecond rate of the frames of late; NaN if it is not known yet
 * @param signals what light can follow, by name; NaN for unknown
 */
public record Report(
        String version,
        PrinterState state,
        String silence,
        AlarmState alarm,
        String faultText,
        String look,
        double brightness,
        boolean quiet,
        int milliamps,
        int ceilingMilliamps,
        String link,
        String broker,
        double framesPerSecond,
        Map<String, Double> signals) {
    /** Keeps a copy of the map, in its order. */
    public Report {
        signals = Collections.unmodifiableMap(new LinkedHashMap<>(signals));
    }

    /**
     * The report as a message. What is not known is left out.
     *
     * @return a JSON object in one line
     */
    public String json() {
        JsonObject told = new JsonObject();
        signals.forEach((name, value) -> told.putRounded(name, value));
        return described().putIfAny("signals", told).text();
    }

    /**
     * The report with every signal, unknown ones as null and none rounded.
     *
     * @return a JSON object to which more may be put
     */
    public JsonObject withExactSignals() {
        JsonObject exact = new JsonObject();
        signals.forEach((name, value) -> exact.put(name, value.doubleValue()));
        return described().put("signals", exact);
    }

    private JsonObject described() {
        return new JsonObject()
                .put("online", true)
                .put("version", version)
                .put("state", state.word())
                .putIfAny("silence", silence)
                .put("alarm", alarm.word())
                .putIfAny("fault_text", faultText)
                .put("look", look)
                .putRounded("brightness", brightness)
                .put("quiet", quiet)
                .put("strip_mA", milliamps)
                .put("ceiling_mA", ceilingMilliamps)
                .put("link", link)
                .put("broker", broker)
                .putRounded("frames_per_s", framesPerSecond);
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
        return state != other.state
                || alarm != other.alarm
                || quiet != other.quiet
                || brightness != other.brightness
                || ceilingMilliamps != other.ceilingMilliamps
                || !silence.equals(other.silence)
                || !faultText.equals(other.faultText)
                || !look.equals(other.look)
                || !link.equals(other.link)
                || !broker.equals(other.broker);
    }
}
