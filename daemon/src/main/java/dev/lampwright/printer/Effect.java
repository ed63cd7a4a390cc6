package dev.lampwright.printer;

import dev.lampwright.payload.Measure;
import dev.lampwright.payload.OwnQuantity;
import dev.lampwright.payload.Plausible;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import dev.lampwright.payload.UnreadableException;
import dev.lampwright.payload.Value;
import dev.lampwright.payload.WordPattern;
import dev.lampwright.upkeep.Printable;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What the value at a binding's place does to the status. */
sealed interface Effect {
    /**
     * Applies a value.
     *
     * @param before the status up to now
     * @param value the value at the place
     * @param atNanos when it came
     * @return the new status
     * @throws UnreadableException if it is not the required kind of value
     */
    PrinterStatus apply(PrinterStatus before, Value value, long atNanos) throws UnreadableException;

    private static String word(Value value) throws UnreadableException {
        return value.word()
                .orElseThrow(() -> new UnreadableException("the value is not a word"))
                .strip();
    }

    private static List<WordPattern> patterns(List<String> words) {
        return words.stream().map(WordPattern::new).toList();
    }

    private static boolean matches(List<WordPattern> patterns, String word) {
        return patterns.stream().anyMatch(pattern -> pattern.matches(word));
    }

    /** The value of a quantity in its own unit. */
    private static double reading(Quantity quantity, Bindings.OfReading binding, Value value)
            throws UnreadableException {
        if (value instanceof Value.None) {
            return Double.NaN;
        }
        double number = number(value, binding.unit());
        if (number == 0 && quantity.isSetpoint()) {
            return 0;
        }
        return Plausible.value(quantity, binding.unit(), number * binding.scale() + binding.offset());
    }

    private static double number(Value value, Unit unit) throws UnreadableException {
        boolean numeric = unit.numeric();
        if (value instanceof Value.Numeric number && numeric) {
            return number.value();
        }
        if (value instanceof Value.Text text) {
            return Measure.of(text.text().strip(), unit);
        }
        throw new UnreadableException(numeric ? "the value is not a number" : "the value is not text");
    }

    /**
     * A number is the reading of a quantity: a JSON number, or text that is one in the unit of the binding. JSON's null means unknown. A
     * target of 0 is off in any unit: no heater is set to 0 °F or 0 K.
     *
     * @param quantity what is read
     * @param binding in which unit, and how it is scaled
     */
    record OfReading(Quantity quantity, Bindings.OfReading binding) implements Effect {
        @Override
        public PrinterStatus apply(PrinterStatus before, Value value, long atNanos) throws UnreadableException {
            return before.withReading(quantity, reading(quantity, binding, value), atNanos);
        }
    }

    /**
     * A number is the reading of a heater that is named in the user's file, as in {@link OfReading}.
     *
     * @param key the name of its temperature or its target
     * @param like the quantity that it is read like
     * @param binding in which unit, and how it is scaled
     */
    record OfOwnHeater(String key, Quantity like, Bindings.OfReading binding) implements Effect {
        @Override
        public PrinterStatus apply(PrinterStatus before, Value value, long atNanos) throws UnreadableException {
            return before.withOwn(key, reading(like, binding, value), atNanos);
        }
    }

    /**
     * A number is the reading of a user-defined quantity: a JSON number, or text that is one, with or without its unit after it. JSON's
     * null means unknown.
     *
     * @param quantity what is read
     * @param binding how it is scaled
     */
    record OfOwnReading(OwnQuantity quantity, Bindings.OfReading binding) implements Effect {
        @Override
        public PrinterStatus apply(PrinterStatus before, Value value, long atNanos) throws UnreadableException {
            return before.withOwn(quantity.key(), value instanceof Value.None ? Double.NaN : own(value), atNanos);
        }

        private double own(Value value) throws UnreadableException {
            Value bare = value instanceof Value.Text text
                    ? new Value.Text(withoutUnit(text.text().strip()))
                    : value;
            double read = number(bare, binding.unit()) * binding.scale() + binding.offset();
            if (!Double.isFinite(read)) {
                throw new UnreadableException("the value is out of range");
            }
            return read;
        }

        private String withoutUnit(String text) {
            String unit = quantity.unit();
            boolean behind = !unit.isEmpty() && text.endsWith(unit);
            return behind ? text.substring(0, text.length() - unit.length()).strip() : text;
        }
    }

    /**
     * A word is the state. A JSON number, true or false counts as the word that it is written as. A word that is bound to no state, and
     * JSON's null, leave the state as it was.
     */
    final class OfState implements Effect {
        private static final Logger LOG = LoggerFactory.getLogger(OfState.class);
        private static final int MOST_CHARS = 200;
        private static final int MOST_UNKNOWN_WORDS = 32;

        private final List<Meaning> meanings;
        private final boolean alsoFaultText;
        private final Set<String> unknownWords = new HashSet<>();
        private final Set<String> unknownAfterFault = new HashSet<>();

        private record Meaning(WordPattern pattern, PrinterState state) {}

        /**
         * Prepares.
         *
         * @param words for each state
         * @param alsoFaultText whether the word for a fault is the printer's only text about it
         */
        OfState(Map<PrinterState, List<String>> words, boolean alsoFaultText) {
            this.alsoFaultText = alsoFaultText;
            this.meanings = words.entrySet().stream()
                    .flatMap(entry ->
                            entry.getValue().stream().map(word -> new Meaning(new WordPattern(word), entry.getKey())))
                    .toList();
        }

        @Override
        public PrinterStatus apply(PrinterStatus before, Value value, long atNanos) throws UnreadableException {
            if (value instanceof Value.None) {
                return before.heardAt(atNanos);
            }
            String word = Effect.word(value);
            if (word.isEmpty() || word.length() > MOST_CHARS) {
                throw new UnreadableException("the value is not a word");
            }
            Optional<PrinterState> state = meanings.stream()
                    .filter(meaning -> meaning.pattern.matches(word))
                    .map(Meaning::state)
                    .findFirst();
            if (state.isEmpty()) {
                tellUnknown(word, before.state());
            }
            return state.map(known -> with(before, known, word, atNanos)).orElseGet(() -> before.heardAt(atNanos));
        }

        private PrinterStatus with(PrinterStatus before, PrinterState state, String word, long atNanos) {
            PrinterStatus after = before.withState(state, atNanos);
            return alsoFaultText ? after.withFaultText(state == PrinterState.FAULT ? word : "", atNanos) : after;
        }

        /** A fault that stays on show because of an unknown word is reported even if the word was reported before. */
        private void tellUnknown(String word, PrinterState before) {
            boolean fault = before == PrinterState.FAULT;
            Set<String> told = fault ? unknownAfterFault : unknownWords;
            if (told.size() >= MOST_UNKNOWN_WORDS || !told.add(word)) {
                return;
            }
            if (fault) {
                LOG.warn(
                        "state: the printer reports \"{}\", which no state is bound to, so the fault stays until it reports a word that"
                                + " is bound; add this one under [printer.state], such as held = [\"{}\"]",
                        Printable.beginning(word, 60),
                        Printable.beginning(word, 60));
            } else {
                LOG.warn(
                        "state: the printer reports \"{}\", which no state is bound to, so the state stays as it was; add the word"
                                + " under [printer.state] if it matters",
                        Printable.beginning(word, 60));
            }
        }
    }

    /** A word is the beginning or the end of an event. Any other word changes nothing. */
    final class OfEvent implements Effect {
        private final String name;
        private final List<WordPattern> begin;
        private final List<WordPattern> end;
        private final long lastsNanos;

        OfEvent(String name, Bindings.OfEvent binding) {
            this.name = name;
            begin = patterns(binding.begin());
            end = patterns(binding.end());
            lastsNanos = binding.lasts().toNanos();
        }

        @Override
        public PrinterStatus apply(PrinterStatus before, Value value, long atNanos) throws UnreadableException {
            String word = Effect.word(value);
            if (matches(begin, word)) {
                return before.withEvent(name, atNanos + lastsNanos, atNanos);
            }
            return matches(end, word) ? before.withEvent(name, atNanos, atNanos) : before.heardAt(atNanos);
        }
    }

    /** A text is the printer's own words for what is wrong. Empty text, and JSON's null, mean that nothing is. */
    record OfFaultText() implements Effect {
        @Override
        public PrinterStatus apply(PrinterStatus before, Value value, long atNanos) throws UnreadableException {
            String text = value.word().orElseThrow(() -> new UnreadableException("the value is not text"));
            return before.withFaultText(value instanceof Value.None ? "" : text, atNanos);
        }
    }

    /**
     * A word, a number, true or false is kept for the conditions that look at its place. JSON's null is kept as empty text.
     *
     * @param place where it is
     */
    record OfSign(Source place) implements Effect {
        private static final int MOST_CHARS = 200;

        @Override
        public PrinterStatus apply(PrinterStatus before, Value value, long atNanos) throws UnreadableException {
            String word = value instanceof Value.None ? "" : Effect.word(value);
            return before.withSign(place, word.substring(0, Math.min(MOST_CHARS, word.length())), atNanos);
        }
    }

    /** A word says that the printer is offline or online. JSON's null changes nothing. */
    final class OfWill implements Effect {
        private final List<WordPattern> gone;

        OfWill(List<String> gone) {
            this.gone = patterns(gone);
        }

        @Override
        public PrinterStatus apply(PrinterStatus before, Value value, long atNanos) throws UnreadableException {
            if (value instanceof Value.None) {
                return before.heardAt(atNanos);
            }
            return matches(gone, Effect.word(value))
                    ? before.gone(atNanos)
                    : before.back().heardAt(atNanos);
        }
    }
}
