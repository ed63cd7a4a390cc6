package dev.lampwright.tool.fit;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;

/** Asks what feeds the strip, and works the ceiling out. */
final class SupplyStep implements Step {
    private static final double USUAL_VOLTS = 5;
    private static final int LEAST_CEILING = 20;

    private enum Source {
        OWN,
        BOARD,
        UNKNOWN
    }

    @Override
    public String name() {
        return "supply";
    }

    @Override
    public String title() {
        return "what feeds the strip";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        bench.darken();
        Source source = bench.ask(Question.choice(
                "What feeds the strip?",
                "Follow the strip's red wire. A strip must not hang on the board's regulator; a few pixels may hang on USB.",
                List.of(
                        new Question.Option<>("1", "a supply of its own", Source.OWN),
                        new Question.Option<>("2", "the board or a USB port", Source.BOARD),
                        new Question.Option<>("0", "I do not know", Source.UNKNOWN))));
        if (source != Source.OWN) {
            bench.say("Then the ceiling stays at " + Setups.SAFE_CEILING
                    + " mA: what a USB 2.0 port gives, without the board's share.");
            return before.withSupply(new Findings.Supply(
                    USUAL_VOLTS,
                    source == Source.BOARD,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Setups.SAFE_CEILING));
        }
        Findings.Supply supply =
                SupplyQuestions.supply("How many volts does it give? Enter means 5.", USUAL_VOLTS, bench);
        bench.say(Ceilings.words(supply.amps(), supply.fuseAmps()));
        int most = supply.ceilingMilliamps();
        return before.withSupply(most <= LEAST_CEILING ? supply : supply.withCeiling(bench.ask(lower(most))));
    }

    private static Question<Integer> lower(int most) {
        return new Question<>(
                "The ceiling will be " + most + " mA. Press Enter, or type a lower number:",
                List.of(),
                "No frame will ask for more than the ceiling, and the controller holds it too. Take less if the wires or"
                        + " connectors are thin: 'lampwright plan' tells what they carry.",
                line -> line.isEmpty() ? most : Numbers.readWhole(line, LEAST_CEILING, most));
    }
}
