package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Asks what feeds the strip, and calculates the ceiling. */
final class SupplyStep implements Step {
    private static final double USUAL_VOLTS = 5;
    private static final int LEAST_CEILING = 20;
    private static final double LEAST_VOLTS = 3;

    /** Highest voltage that is safe to touch: 60 V of direct current (IEC 62368-1, ES1; from memory). */
    private static final double MOST_VOLTS = 60;

    private static final double LEAST_AMPS = 0.1;
    private static final double LEAST_FUSE = 0.05;
    private static final double MOST_AMPS = 60;

    /** The marking of fuses by IEC 60127: FF, F, M, T or TT for how fast they are, then the rating (from memory). */
    private static final Pattern STAMPED = Pattern.compile("(?i)(?:FF|F|M|TT|T)?\\s*([0-9.,]+)\\s*A?");

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
                        "Follow the strip's red wire. The board's regulator must not feed a strip; USB can feed a few pixels.",
                        List.of(
                                new Question.Option<>("1", "a supply of its own", Source.OWN).named("supply_own"),
                                new Question.Option<>("2", "the board or a USB port", Source.BOARD)
                                        .named("supply_board"),
                                new Question.Option<>("0", "I do not know", Source.UNKNOWN).named("unknown")))
                .coded("supply_source"));
        if (source != Source.OWN) {
            bench.say(Phrase.of(
                    "supply_safe",
                    "Then the ceiling stays at " + FittingSetups.SAFE_CEILING
                            + " mA: what a USB 2.0 port gives, without the board's share.",
                    "most",
                    FittingSetups.SAFE_CEILING));
            return before.withSupply(new Findings.Supply(
                    USUAL_VOLTS,
                    source == Source.BOARD,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    FittingSetups.SAFE_CEILING));
        }
        Phrase volts = Phrase.of("supply_volts", "How many volts does it give? Enter means 5.");
        Findings.Supply supply = askSupply(volts, USUAL_VOLTS, bench);
        bench.say(Ceilings.words(supply.amps(), supply.fuseAmps()));
        int most = supply.ceilingMilliamps();
        return before.withSupply(most <= LEAST_CEILING ? supply : supply.withCeiling(bench.ask(lower(most))));
    }

    private static Question<Integer> lower(int most) {
        return new Question<Integer>(
                        "The ceiling will be " + most + " mA. Press Enter, or type a lower number:",
                        "No frame will ask for more than the ceiling, and the controller enforces it too. Choose less if the wires or"
                                + " connectors are thin: 'lampwright plan' calculates what they can carry.",
                        line -> line.isEmpty() ? most : TypedNumbers.readWhole(line, LEAST_CEILING, most))
                .coded("supply_ceiling", "most", most)
                .in(Form.whole(LEAST_CEILING, most).usually(Integer.toString(most)));
    }

    /**
     * Asks for the rating of a separate supply, and for the fuse behind it.
     *
     * @param voltsWords the question for its voltage, with its code
     * @param usualVolts the value for Enter alone
     * @return the supply, with the ceiling that it and its fuse can carry
     */
    static Findings.Supply askSupply(Phrase voltsWords, double usualVolts, FittingBench bench)
            throws LeaveException, IOException {
        double volts = bench.ask(new Question<Double>(
                        voltsWords.english(),
                        "It is on the supply's label, after OUTPUT, and on the lights.",
                        line -> line.isEmpty() ? usualVolts : TypedNumbers.read(line, LEAST_VOLTS, MOST_VOLTS))
                .coded(voltsWords.code())
                .in(Form.number(LEAST_VOLTS, MOST_VOLTS).usually(TypedNumbers.shown(usualVolts))));
        OptionalDouble amps = bench.ask(new Question<OptionalDouble>(
                        "How many amperes can it give? Enter if you do not know.",
                        "It is on the supply's label, after OUTPUT, for instance 4 A; 4000 mA are 4.",
                        line -> TypedNumbers.readIfThere(line, LEAST_AMPS, MOST_AMPS))
                .coded("supply_amps")
                .in(Form.number(LEAST_AMPS, MOST_AMPS).skipped("unknown")));
        OptionalDouble fuse = amps.isEmpty() ? amps : fuse(bench);
        return new Findings.Supply(volts, false, amps, fuse, Ceilings.of(amps, fuse));
    }

    /** A rating as stamped on the fuse, without the letters for its speed before it and its unit after it. */
    private static String bare(String rating) {
        Matcher stamped = STAMPED.matcher(rating);
        return stamped.matches() ? stamped.group(1) : rating;
    }

    /** No fuse is treated like an unknown one. */
    private static OptionalDouble fuse(FittingBench bench) throws LeaveException, IOException {
        OptionalDouble fuse = bench.ask(new Question<OptionalDouble>(
                        "What fuse is in the red wire, in amperes? 0 if there is none, Enter if you do not know.",
                        "The fuse protects the wire behind it. Its rating is printed or stamped on it, for instance T3.15A.",
                        line -> line.equals("0")
                                ? OptionalDouble.of(0)
                                : TypedNumbers.readIfThere(bare(line), LEAST_FUSE, MOST_AMPS))
                .coded("supply_fuse")
                .in(Form.TEXT.skipped("unknown")));
        return fuse.stream().filter(amps -> amps > 0).findFirst();
    }
}
