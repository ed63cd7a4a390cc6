package dev.lampwright.config;

import dev.lampwright.signal.Follow;
import dev.lampwright.signal.Signal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The keys {@code by}, {@code from} and {@code to}: a signal and the bounds that it is scaled to. */
final class FollowKeys {
    /** The built-in signals, by name. */
    static final Map<String, Signal> SIGNALS = Words.of(Signal.all().toArray(Signal[]::new), Signal::key);

    private static final double LARGEST = 1e9;
    private static final Follow STAND_IN = Follow.of(Signal.JOB_PROGRESS);

    private FollowKeys() {}

    /** The keys, with a prefix. */
    static List<Key<?>> keys(String prefix) {
        return List.of(
                Key.own(prefix + "by", "a signal").of("signal").comment("\"bed.heat\"", "the signal to follow"),
                Key.own(prefix + "from", "number")
                        .of("number")
                        .without("0, or the first of its range")
                        .comment("40", "the value of it that counts as 0"),
                Key.own(prefix + "to", "number")
                        .of("number")
                        .without("1, or the last of its range")
                        .comment("220", "the value of it that counts as 1"));
    }

    /** The same, for kinds of tables in which they do not always apply. */
    static List<Key<?>> keys(String prefix, String with) {
        return keys(prefix).stream().<Key<?>>map(key -> key.with(with)).toList();
    }

    /**
     * Reads the keys.
     *
     * @param table where they are
     * @param prefix prefix of their names, such as {@code opacity_}, or empty
     * @return what to follow
     */
    static Follow read(Table table, String prefix) {
        Optional<Signal> signal = found(table, prefix);
        OptionalDouble from = table.numberIfThere(prefix + "from", -LARGEST, LARGEST);
        OptionalDouble to = table.numberIfThere(prefix + "to", -LARGEST, LARGEST);
        if (signal.isEmpty() || !table.right()) {
            return STAND_IN;
        }
        noteIfNeeded(table, signal.get(), prefix + "from", "0");
        noteIfNeeded(table, signal.get(), prefix + "to", "1");
        Follow follow = new Follow(
                signal.get(),
                from.orElse(signal.get().low()),
                to.orElse(signal.get().high()));
        if (follow.from() == follow.to()) {
            table.mistake(
                    prefix + "to",
                    new MistakeText("from_is_to", "is the same as " + prefix + "from", "give two values that differ"));
            return STAND_IN;
        }
        return follow;
    }

    /**
     * Reads the key {@code by} alone.
     *
     * @param table where it is
     * @param prefix prefix of its name
     * @return the signal; a substitute if it is missing or wrong
     */
    static Signal signal(Table table, String prefix) {
        return found(table, prefix).orElse(STAND_IN.signal());
    }

    private static Optional<Signal> found(Table table, String prefix) {
        String key = prefix + "by";
        if (!table.has(key)) {
            table.mistake(
                    key,
                    new MistakeText("no_signal", "is missing", "give the signal to follow, for instance \"bed.heat\""));
        }
        return table.named(key, "signal", table.signals());
    }

    private static void noteIfNeeded(Table table, Signal signal, String key, String share) {
        if (!signal.isShare() && !table.has(key)) {
            String what = "is missing, and " + signal.key() + " does not run from 0 to 1 by itself";
            table.mistake(
                    key,
                    new MistakeText("no_share", what, "give the value of " + signal.key() + " that counts as " + share)
                            .with("signal", signal.key())
                            .with("share", share));
        }
    }
}
