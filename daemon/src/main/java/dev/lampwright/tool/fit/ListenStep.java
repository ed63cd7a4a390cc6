package dev.lampwright.tool.fit;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Map;

/** Listens to a broker that is already known, to find where the printer reports what. */
final class ListenStep implements Step {
    private final PrinterFinder finder;
    private final Map<String, String> broker;
    private final Map<String, List<String>> known;

    /**
     * Prepares.
     *
     * @param finder listens
     * @param broker the content of the file's section {@code broker}
     * @param known the words in the file, by state
     */
    ListenStep(PrinterFinder finder, Map<String, String> broker, Map<String, List<String>> known) {
        this.finder = finder;
        this.broker = broker;
        this.known = Map.copyOf(known);
    }

    @Override
    public String name() {
        return "listen";
    }

    @Override
    public String title() {
        return "what the printer reports";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        bench.darken();
        Duration duration = Duration.ofSeconds(bench.ask(PrinterStep.SECONDS));
        HeardPrinter heard =
                new Listening(finder, bench, false).to(broker, duration).heard();
        String sections = StateWordsDialogue.completed(heard, known, finder, broker, bench);
        return sections.isEmpty() ? before : before.withPrinter(sections);
    }
}
