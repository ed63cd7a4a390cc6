package dev.lampwright.tool.fit;

import java.io.IOException;
import java.time.Duration;
import java.util.Map;

/** Listens at a broker that is known already, to find where the printer says what. */
final class ListenStep implements Step {
    private final PrinterFinder finder;
    private final Map<String, String> broker;

    ListenStep(PrinterFinder finder, Map<String, String> broker) {
        this.finder = finder;
        this.broker = broker;
    }

    @Override
    public String name() {
        return "listen";
    }

    @Override
    public String title() {
        return "what the printer says";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        bench.darken();
        Duration duration = Duration.ofSeconds(bench.ask(PrinterStep.SECONDS));
        String found = bench.find(() -> finder.find(broker, duration, bench).orElse(""));
        return found.isEmpty() ? before : before.withPrinter(found);
    }
}
