package dev.lampwright.printer;

import dev.lampwright.payload.OwnHeater;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import java.time.Duration;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Where the printer reports everything that Lampwright reads. If several places report the same thing, the newest message counts; if one
 * message reaches several places, the last in the list counts.
 *
 * @param states where it reports what it is doing; empty if it does not, and then the state is derived from the readings
 * @param readings where it reports each quantity, at least one place each; those not in the map are not reported
 * @param own where it reports the readings that the user's file names, in the order of the file
 * @param events where it reports that something begins and ends, by name
 * @param faultText where it reports in its own words what is wrong
 * @param will where its broker reports it offline
 * @param conditions what shows a state that is not reported in one word; the first that is met counts before {@code states}
 */
public record Bindings(
        List<OfState> states,
        Map<Quantity, List<OfReading>> readings,
        Map<OwnQuantity, List<OfReading>> own,
        Map<String, OfEvent> events,
        Optional<Source> faultText,
        Optional<OfWill> will,
        List<OfCondition> conditions) {
    /**
     * Bindings of a printer that reports its state in words.
     *
     * @param states as above
     * @param readings as above
     * @param own as above
     * @param events as above
     * @param faultText as above
     * @param will as above
     */
    public Bindings(
            List<OfState> states,
            Map<Quantity, List<OfReading>> readings,
            Map<OwnQuantity, List<OfReading>> own,
            Map<String, OfEvent> events,
            Optional<Source> faultText,
            Optional<OfWill> will) {
        this(states, readings, own, events, faultText, will, List.of());
    }

    /**
     * Bindings of a printer without words for what is wrong and without a last will.
     *
     * @param states as above
     * @param readings as above
     * @param events as above
     */
    public Bindings(List<OfState> states, Map<Quantity, List<OfReading>> readings, Map<String, OfEvent> events) {
        this(states, readings, Map.of(), events, Optional.empty(), Optional.empty());
    }

    /** Keeps copies. */
    public Bindings {
        states = List.copyOf(states);
        readings = Map.copyOf(copyOf(readings));
        own = Collections.unmodifiableMap(copyOf(own));
        events = Map.copyOf(events);
        conditions = List.copyOf(conditions);
    }

    /**
     * These and words for what is wrong.
     *
     * @param source where the printer reports them
     * @return new bindings
     */
    public Bindings withFaultText(Source source) {
        return new Bindings(states, readings, own, events, Optional.of(source), will, conditions);
    }

    /**
     * These and a last will.
     *
     * @param binding where the broker reports the printer offline
     * @return new bindings
     */
    public Bindings withWill(OfWill binding) {
        return new Bindings(states, readings, own, events, faultText, Optional.of(binding), conditions);
    }

    /**
     * These with conditions.
     *
     * @param all what shows a state, in the order in which they count
     * @return new bindings
     */
    public Bindings withConditions(List<OfCondition> all) {
        return new Bindings(states, readings, own, events, faultText, will, all);
    }

    /**
     * These combined with another printer's, to know what is reported at all.
     *
     * @param other those of the other
     * @return all of them; where both have one of a kind, this one's
     */
    public Bindings and(Bindings other) {
        Map<Quantity, List<OfReading>> allReadings = new LinkedHashMap<>(readings);
        other.readings.forEach((quantity, more) -> allReadings.merge(quantity, more, Bindings::joined));
        Map<OwnQuantity, List<OfReading>> allOwn = new LinkedHashMap<>(own);
        other.own.forEach((quantity, more) -> allOwn.merge(quantity, more, Bindings::joined));
        Map<String, OfEvent> allEvents = new LinkedHashMap<>(other.events);
        allEvents.putAll(events);
        return new Bindings(
                joined(states, other.states),
                allReadings,
                allOwn,
                allEvents,
                faultText.or(() -> other.faultText),
                will.or(() -> other.will),
                joined(conditions, other.conditions));
    }

    private static <T> List<T> joined(List<T> some, List<T> more) {
        return Stream.concat(some.stream(), more.stream()).toList();
    }

    /**
     * Whether the printer can report a state.
     *
     * @param state which
     * @return false if neither a word nor a condition is bound to it
     */
    public boolean tell(PrinterState state) {
        return states.stream().anyMatch(binding -> binding.words().containsKey(state))
                || conditions.stream().anyMatch(condition -> condition.state() == state);
    }

    /**
     * The heaters that the user's file names.
     *
     * @return in the order of the file
     */
    public List<OwnHeater> heaters() {
        return OwnHeater.among(own.keySet());
    }

    private static <Q> Map<Q, List<OfReading>> copyOf(Map<Q, List<OfReading>> readings) {
        Map<Q, List<OfReading>> copy = new LinkedHashMap<>();
        readings.forEach((quantity, bindings) -> copy.put(quantity, List.copyOf(bindings)));
        return copy;
    }

    /**
     * The topics to subscribe to.
     *
     * @return every bound topic filter, each once
     */
    public List<String> topicFilters() {
        return Stream.of(
                        states.stream().map(OfState::source),
                        readings.values().stream().flatMap(Collection::stream).map(OfReading::source),
                        own.values().stream().flatMap(Collection::stream).map(OfReading::source),
                        events.values().stream().map(OfEvent::source),
                        faultText.stream(),
                        will.stream().map(OfWill::source),
                        signs())
                .flatMap(Function.identity())
                .map(Source::topicFilter)
                .distinct()
                .sorted()
                .toList();
    }

    /**
     * Where the printer reports what it is doing, and in what words.
     *
     * @param source where the word is reported
     * @param words the words for each state; {@code *} stands for any characters, case does not count. The first state with a word that
     *     matches wins, in the order in which the file names them
     */
    public record OfState(Source source, Map<PrinterState, List<String>> words) {
        /** Keeps a copy of the map, in its order. */
        public OfState {
            words = Collections.unmodifiableMap(new LinkedHashMap<>(words));
        }
    }

    /**
     * The places that conditions look at.
     *
     * @return each once
     */
    Stream<Source> signs() {
        return conditions.stream()
                .flatMap(condition -> condition.all().stream())
                .map(Sign::source)
                .distinct();
    }

    /**
     * A state that the printer shows by the values of one or more places, such as flags, a code or any text.
     *
     * @param state the state
     * @param all what must hold, by the newest message of each place; at least one
     */
    public record OfCondition(PrinterState state, List<Sign> all) {
        /** Keeps a copy of the list. */
        public OfCondition {
            all = List.copyOf(all);
        }
    }

    /**
     * The values that a place must or must not have. A place that has reported nothing yet, empty text, or JSON's null, meets nothing.
     *
     * @param source the place
     * @param is the place must have one of these; empty for any. {@code *} stands for any characters, case does not count
     * @param not the place must have none of these
     */
    public record Sign(Source source, List<String> is, List<String> not) {
        /** Keeps copies of the lists. */
        public Sign {
            is = List.copyOf(is);
            not = List.copyOf(not);
        }
    }

    /**
     * Where the printer reports one quantity, and how. The value becomes a number, times {@code scale}, plus {@code offset}, and is then
     * converted from {@code unit} to the quantity's own unit.
     *
     * @param source where it is reported
     * @param unit the unit in which it is reported
     * @param scale the number is multiplied by this
     * @param offset and then this is added
     */
    public record OfReading(Source source, Unit unit, double scale, double offset) {
        /**
         * A number in the quantity's own unit.
         *
         * @param source where it is reported
         */
        public OfReading(Source source) {
            this(source, Unit.OWN, 1, 0);
        }
    }

    /**
     * Where the printer reports that something begins and ends, such as the taking of a picture.
     *
     * @param source where the word is reported
     * @param begin words with which it begins; {@code *} stands for any characters, case does not count
     * @param end words with which it ends
     * @param lasts how long it lasts at most, so that an end that is never reported does no harm
     */
    public record OfEvent(Source source, List<String> begin, List<String> end, Duration lasts) {
        /** Keeps copies of the lists. */
        public OfEvent {
            begin = List.copyOf(begin);
            end = List.copyOf(end);
        }
    }

    /**
     * Where the broker reports the printer offline: the printer's last will (MQTT 3.1.1, section 3.1.2.5).
     *
     * @param source where the word is reported
     * @param gone the words for that; {@code *} stands for any characters, case does not count. Any other word means that it is online
     */
    public record OfWill(Source source, List<String> gone) {
        /** Keeps a copy of the list. */
        public OfWill {
            gone = List.copyOf(gone);
        }
    }
}
