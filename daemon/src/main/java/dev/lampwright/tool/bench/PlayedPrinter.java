package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.config.PrinterLight;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.Daemon;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Statuses;
import dev.lampwright.signal.Signal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * The printer of a preview: one that somebody plays, or the real one as it is now.
 *
 * @param statuses what is known of each printer, at and before {@code startNanos}
 * @param startNanos when the preview begins, on the clock of the statuses
 * @param signals values that signals are kept at; NaN for unknown
 */
record PlayedPrinter(Statuses statuses, long startNanos, Map<Signal, Double> signals) implements FilmPrinter {
    private static final long AN_HOUR_NANOS = TimeUnit.HOURS.toNanos(1);

    /** What is reported now. */
    static PlayedPrinter live(Daemon daemon) {
        return new PlayedPrinter(daemon.statuses(), System.nanoTime(), Map.of());
    }

    /**
     * What somebody plays.
     *
     * @param config whose names the words are
     * @param body {@code state}, {@code printer}, {@code events}, {@code signals}; all may be left out
     */
    static PlayedPrinter of(Config config, BenchBody body) throws BenchRefusal {
        PrinterStatus status = PrinterStatus.nothingHeard();
        if (body.has("state")) {
            status = status.withState(state(body.text("state")), 0);
        }
        for (String event : body.texts("events")) {
            if (!config.bindings().events().containsKey(event)) {
                throw BenchRefusal.badRequest("there is no event " + event);
            }
            status = status.withEvent(event, AN_HOUR_NANOS, 0);
        }
        Statuses statuses = Statuses.NOTHING_HEARD;
        for (String printer : printers(config, body.text("printer"))) {
            statuses = statuses.with(printer, status);
        }
        return new PlayedPrinter(statuses, 0, signals(config.light(), body));
    }

    private static List<String> printers(Config config, String wanted) throws BenchRefusal {
        List<String> all =
                config.light().printers().stream().map(PrinterLight::name).toList();
        if (wanted.isEmpty()) {
            return all;
        }
        if (!all.contains(wanted)) {
            throw BenchRefusal.badRequest("there is no printer " + wanted);
        }
        return List.of(wanted);
    }

    private static PrinterState state(String word) throws BenchRefusal {
        return Stream.of(PrinterState.values())
                .filter(state -> state.word().equals(word))
                .findFirst()
                .orElseThrow(() -> BenchRefusal.badRequest("there is no state " + word));
    }

    /** All signals that a look of this configuration can follow. */
    static List<Signal> all(LightSpec light) {
        List<Signal> all = new ArrayList<>(Signal.all());
        all.addAll(light.own());
        all.addAll(light.named());
        return all;
    }

    private static Map<Signal, Double> signals(LightSpec light, BenchBody body) throws BenchRefusal {
        Map<String, Signal> byName = new HashMap<>();
        all(light).forEach(signal -> byName.put(signal.key(), signal));
        Map<Signal, Double> signals = new HashMap<>();
        for (Map.Entry<String, OptionalDouble> given : body.numbers("signals").entrySet()) {
            if (!byName.containsKey(given.getKey())) {
                throw BenchRefusal.badRequest("there is no signal " + given.getKey());
            }
            signals.put(byName.get(given.getKey()), given.getValue().orElse(Double.NaN));
        }
        return signals;
    }

    @Override
    public Chain chain(Config config, LightSpec light, int rate) {
        Chain chain = Chain.of(config.setup(), light, rate);
        chain.hold(signals);
        return chain;
    }

    @Override
    public Statuses at(Chain chain, double seconds, long nanos, DrawPatience patience) {
        return statuses;
    }

    @Override
    public void close() {
        // There is nothing to close.
    }
}
