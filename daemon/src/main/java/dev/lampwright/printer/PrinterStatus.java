package dev.lampwright.printer;

import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.upkeep.Printable;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** What is known about the printer at one moment. Immutable; each message makes a new one. */
public final class PrinterStatus {
    private static final int MOST_TEXT_CHARS = 200;
    private static final PrinterStatus NOTHING_HEARD = new PrinterStatus(
            PrinterState.SILENT,
            PrinterState.SILENT,
            false,
            false,
            0,
            new EnumMap<>(Quantity.class),
            Map.of(),
            Map.of(),
            "",
            Map.of());

    private final PrinterState told;
    private final PrinterState state;
    private final boolean gone;
    private final boolean heard;
    private final long heardAtNanos;
    private final Map<Quantity, Reading> readings;
    private final Map<String, Reading> own;
    private final Map<String, Long> eventEnds;
    private final String faultText;
    private final Map<Source, String> signs;

    private PrinterStatus(
            PrinterState told,
            PrinterState state,
            boolean gone,
            boolean heard,
            long heardAtNanos,
            Map<Quantity, Reading> readings,
            Map<String, Reading> own,
            Map<String, Long> eventEnds,
            String faultText,
            Map<Source, String> signs) {
        this.told = told;
        this.state = state;
        this.gone = gone;
        this.heard = heard;
        this.heardAtNanos = heardAtNanos;
        this.readings = readings;
        this.own = own;
        this.eventEnds = eventEnds;
        this.faultText = faultText;
        this.signs = signs;
    }

    /**
     * The status before the first message.
     *
     * @return silent, with no reading known
     */
    public static PrinterStatus nothingHeard() {
        return NOTHING_HEARD;
    }

    /**
     * The state that the printer last reported, or that its readings show.
     *
     * @return {@link PrinterState#SILENT} until there is one, and while the printer is offline
     */
    public PrinterState state() {
        return gone ? PrinterState.SILENT : state;
    }

    /**
     * The same, as if the printer were not offline.
     *
     * @return {@link PrinterState#SILENT} until there is one
     */
    PrinterState stateBeforeItWent() {
        return state;
    }

    /**
     * Whether the printer's last will reports it offline.
     *
     * @return false if it has none
     */
    public boolean isGone() {
        return gone;
    }

    /**
     * The state that the printer itself last reported.
     *
     * @return {@link PrinterState#SILENT} until it has reported one
     */
    PrinterState toldState() {
        return told;
    }

    /**
     * The printer's own words for what is wrong.
     *
     * @return at most 200 printable characters; empty if there are none
     */
    public Optional<String> faultText() {
        return faultText.isEmpty() ? Optional.empty() : Optional.of(faultText);
    }

    /**
     * The state that counts at some time: silent, if nothing has been heard for long.
     *
     * @param nanos the time
     * @param silentAfterNanos how long is long
     * @return the state
     */
    public PrinterState stateAt(long nanos, long silentAfterNanos) {
        return heard && nanos - heardAtNanos <= silentAfterNanos ? state() : PrinterState.SILENT;
    }

    /**
     * How long the state that counts at some time stays, if nothing new is heard.
     *
     * @param nanos the time
     * @param silentAfterNanos how long is long
     * @return ns, 0 or more; the largest value if it does not change
     */
    public long stateStillFor(long nanos, long silentAfterNanos) {
        boolean counts = heard && nanos - heardAtNanos <= silentAfterNanos;
        return counts ? silentAfterNanos - (nanos - heardAtNanos) : Long.MAX_VALUE;
    }

    /**
     * Whether any bound and readable message has come.
     *
     * @return false only before the first
     */
    public boolean heard() {
        return heard;
    }

    /**
     * When the last bound and readable message came.
     *
     * @return ns on the daemon's monotonic clock; meaningless unless {@link #heard}
     */
    public long heardAtNanos() {
        return heardAtNanos;
    }

    /**
     * The newest reading of a quantity.
     *
     * @param quantity which
     * @return the reading, {@link Reading#UNKNOWN} if there is none
     */
    public Reading reading(Quantity quantity) {
        return readings.getOrDefault(quantity, Reading.UNKNOWN);
    }

    /**
     * The newest value of a quantity.
     *
     * @param quantity which
     * @return the value, NaN if unknown
     */
    public double value(Quantity quantity) {
        return reading(quantity).value();
    }

    /**
     * The newest reading of a user-defined quantity.
     *
     * @param name its name in the configuration
     * @return the reading, {@link Reading#UNKNOWN} if there is none
     */
    public Reading own(String name) {
        return own.getOrDefault(name, Reading.UNKNOWN);
    }

    /**
     * The names of the user-defined readings that have been reported.
     *
     * @return in no order; must not be modified
     */
    Set<String> ownNames() {
        return own.keySet();
    }

    /**
     * This after a message that contained nothing new.
     *
     * @param atNanos when it came
     * @return a new status
     */
    public PrinterStatus heardAt(long atNanos) {
        return new PrinterStatus(told, state, gone, true, atNanos, readings, own, eventEnds, faultText, signs);
    }

    /**
     * This with a state that has just been reported.
     *
     * @param newState what the printer reports
     * @param atNanos when it was reported
     * @return a new status
     */
    public PrinterStatus withState(PrinterState newState, long atNanos) {
        return new PrinterStatus(newState, newState, gone, true, atNanos, readings, own, eventEnds, faultText, signs);
    }

    /**
     * This with a state derived from the readings instead of the one reported.
     *
     * @param judged the state as it counts
     * @return this, if it is the same; or a new status
     */
    PrinterStatus judged(PrinterState judged) {
        return judged == state
                ? this
                : new PrinterStatus(
                        told, judged, gone, heard, heardAtNanos, readings, own, eventEnds, faultText, signs);
    }

    /**
     * This after the printer's last will has reported it offline.
     *
     * @param atNanos when it was reported
     * @return a new status
     */
    PrinterStatus gone(long atNanos) {
        return new PrinterStatus(told, state, true, true, atNanos, readings, own, eventEnds, faultText, signs);
    }

    /**
     * This for a printer that is online.
     *
     * @return this, if it is not offline; or a new status
     */
    PrinterStatus back() {
        return gone
                ? new PrinterStatus(told, state, false, heard, heardAtNanos, readings, own, eventEnds, faultText, signs)
                : this;
    }

    /**
     * This with the printer's own words for what is wrong.
     *
     * @param text any text; stored without surrounding white space, printable and cut to 200 characters. Empty for none
     * @param atNanos when it was reported
     * @return a new status
     */
    public PrinterStatus withFaultText(String text, long atNanos) {
        String kept = Printable.beginning(text.strip(), MOST_TEXT_CHARS);
        return new PrinterStatus(told, state, gone, true, atNanos, readings, own, eventEnds, kept, signs);
    }

    /**
     * This with a reading that has just come.
     *
     * @param quantity what was read
     * @param value its value; NaN if the printer reports it as unknown
     * @param atNanos when it came
     * @return a new status
     */
    public PrinterStatus withReading(Quantity quantity, double value, long atNanos) {
        Map<Quantity, Reading> newReadings = new EnumMap<>(readings);
        newReadings.put(quantity, new Reading(value, atNanos));
        return new PrinterStatus(told, state, gone, true, atNanos, newReadings, own, eventEnds, faultText, signs);
    }

    /**
     * This with a user-defined reading that has just come.
     *
     * @param name its name in the configuration
     * @param value its value; NaN if the printer reports it as unknown
     * @param atNanos when it came
     * @return a new status
     */
    public PrinterStatus withOwn(String name, double value, long atNanos) {
        Map<String, Reading> newOwn = new HashMap<>(own);
        newOwn.put(name, new Reading(value, atNanos));
        return new PrinterStatus(told, state, gone, true, atNanos, readings, newOwn, eventEnds, faultText, signs);
    }

    /**
     * The part of this that still applies under other bindings: what is reported in the same places as before.
     *
     * @param before where this was reported
     * @param now the bindings from now on
     * @return a new status
     */
    PrinterStatus kept(Bindings before, Bindings now) {
        boolean sameStates = now.states().equals(before.states());
        Map<Quantity, Reading> sameReadings = new EnumMap<>(readings);
        sameReadings
                .keySet()
                .removeIf(quantity -> !Objects.equals(
                        now.readings().get(quantity), before.readings().get(quantity)));
        Map<String, Reading> sameOwn = new HashMap<>(own);
        sameOwn.keySet().removeIf(name -> !places(now, name).equals(places(before, name)));
        Map<String, Long> sameEvents = new HashMap<>(eventEnds);
        sameEvents
                .keySet()
                .removeIf(name ->
                        !Objects.equals(now.events().get(name), before.events().get(name)));
        return new PrinterStatus(
                sameStates ? told : PrinterState.SILENT,
                sameStates ? state : PrinterState.SILENT,
                gone && now.will().equals(before.will()),
                heard,
                heardAtNanos,
                sameReadings,
                sameOwn,
                sameEvents,
                now.faultText().equals(before.faultText()) ? faultText : "",
                signs);
    }

    /**
     * This with what has just come at a place that conditions look at.
     *
     * @param place where
     * @param word what
     * @param atNanos when the message came
     * @return a new status
     */
    PrinterStatus withSign(Source place, String word, long atNanos) {
        Map<Source, String> newSigns = new HashMap<>(signs);
        newSigns.put(place, word);
        return new PrinterStatus(told, state, gone, true, atNanos, readings, own, eventEnds, faultText, newSigns);
    }

    /**
     * The value at a place that conditions look at.
     *
     * @param place where
     * @return the newest; empty if none has come
     */
    Optional<String> sign(Source place) {
        return Optional.ofNullable(signs.get(place));
    }

    private static List<Map.Entry<OwnQuantity, List<Bindings.OfReading>>> places(Bindings bindings, String name) {
        return bindings.own().entrySet().stream()
                .filter(entry -> entry.getKey().key().equals(name))
                .toList();
    }

    /**
     * Whether an event is going on.
     *
     * @param name its name in the configuration
     * @param nanos the time
     * @return false also if it has never been reported
     */
    public boolean eventAt(String name, long nanos) {
        Long end = eventEnds.get(name);
        return end != null && end - nanos > 0;
    }

    /**
     * How long the result of {@link #eventAt} stays the same, if nothing new is heard.
     *
     * @param name its name in the configuration
     * @param nanos the time
     * @return ns, more than 0; the largest value if it does not change
     */
    public long eventStillFor(String name, long nanos) {
        Long end = eventEnds.get(name);
        return end != null && end - nanos > 0 ? end - nanos : Long.MAX_VALUE;
    }

    /**
     * When each event ends, or has ended.
     *
     * @return times in ns on the daemon's monotonic clock, by name; must not be modified
     */
    public Map<String, Long> eventEnds() {
        return eventEnds;
    }

    /**
     * This with an event that has just begun or ended.
     *
     * @param name its name in the configuration
     * @param endNanos when it ends, or has ended
     * @param atNanos when the message came
     * @return a new status
     */
    public PrinterStatus withEvent(String name, long endNanos, long atNanos) {
        Map<String, Long> newEnds = new HashMap<>(eventEnds);
        newEnds.put(name, endNanos);
        return new PrinterStatus(told, state, gone, true, atNanos, readings, own, newEnds, faultText, signs);
    }
}
