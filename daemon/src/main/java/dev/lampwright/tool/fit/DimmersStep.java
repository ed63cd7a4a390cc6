package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;

/** Tries the controller's dimmers one by one, and asks what is on each. */
final class DimmersStep implements Step {
    private static final double USUAL_VOLTS = 24;
    private static final double SHARE = 0.3;
    private static final int MOST_MILLIAMPS = 65_535;

    @Override
    public String name() {
        return "dimmers";
    }

    @Override
    public String title() {
        return "lights on the dimmers";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        int outputs = before.board().orElseThrow().here().dimmers();
        if (outputs == 0) {
            bench.say("The controller has no dimmers.");
            return before;
        }
        bench.darken();
        boolean any = bench.ask(Question.yesOrNo(
                "The controller has " + outputs
                        + " dimmers. Are there lights on some of them, each with its own MOSFET?",
                "A dimmer switches a plain light: a white work light, or one colour of a plain colour strip."));
        return any ? fed(before, outputs, bench) : before;
    }

    private static Findings fed(Findings before, int outputs, FittingBench bench) throws LeaveException, IOException {
        Findings.Supply supply =
                SupplyStep.askSupply("How many volts does their supply give? Enter means 24.", USUAL_VOLTS, bench);
        if (supply.amps().isEmpty() || supply.fuseAmps().isEmpty()) {
            bench.say("Without knowing supply and fuse they stay dark. Find out, and come back with b; or write"
                    + " [dimmers] into the file by hand.");
            return before;
        }
        int full = bench.ask(new Question<>(
                "How many mA does the strongest of these lights take at full, by its label? (Watts ÷ volts × 1000.)",
                List.of(),
                "It keeps the lights below their supply's ceiling of " + supply.ceilingMilliamps()
                        + " mA while they are tried.",
                line -> TypedNumbers.readWhole(line, 1, MOST_MILLIAMPS)));
        return tried(before, supply, full, outputs, bench);
    }

    private static Findings tried(Findings before, Findings.Supply supply, int full, int outputs, FittingBench bench)
            throws LeaveException, IOException {
        Setup setup = FittingSetups.withDimmers(
                FittingSetups.of(before), supply.ceilingMilliamps(), Collections.nCopies(outputs, full));
        double share = Math.min(SHARE, 0.9 * supply.ceilingMilliamps() / full);
        List<Findings.DimmerUse> uses = new ArrayList<>();
        for (int i = 0; i < outputs; i++) {
            bench.show(setup, Scenes.dimmer(i, share));
            Findings.Hanging what = bench.ask(what(i));
            String name = what == Findings.Hanging.WHITE ? bench.ask(name(before, uses)) : "";
            int milliamps = what == Findings.Hanging.NOTHING ? 1 : bench.ask(milliamps(full));
            uses.add(new Findings.DimmerUse(what, name, milliamps));
        }
        bench.darken();
        boolean none = uses.stream().allMatch(use -> use.what() == Findings.Hanging.NOTHING);
        return none ? before : before.withDimmers(uses, heated(supply, uses, bench));
    }

    private static Findings.Supply heated(Findings.Supply supply, List<Findings.DimmerUse> uses, FittingBench bench) {
        int pulses = uses.stream()
                .filter(use -> use.what() != Findings.Hanging.NOTHING)
                .mapToInt(Findings.DimmerUse::fullMilliamps)
                .sum();
        int ceiling = Ceilings.heated(supply.ceilingMilliamps(), supply.fuseAmps(), 0, pulses);
        if (ceiling < supply.ceilingMilliamps() && pulses > supply.ceilingMilliamps()) {
            bench.say(Ceilings.heatedWords(ceiling, supply.fuseAmps(), pulses));
        }
        return supply.withCeiling(ceiling);
    }

    private static Question<Findings.Hanging> what(int output) {
        return Question.choice(
                "Dimmer " + output + " is on, at less than a third. What lights?",
                "If it is one colour of a plain colour strip, say which; a white light gets a name of its own.",
                List.of(
                        new Question.Option<>("0", "nothing", Findings.Hanging.NOTHING),
                        new Question.Option<>("1", "a white light", Findings.Hanging.WHITE),
                        new Question.Option<>("2", "red of a plain colour strip", Findings.Hanging.RED),
                        new Question.Option<>("3", "green of a plain colour strip", Findings.Hanging.GREEN),
                        new Question.Option<>("4", "blue of a plain colour strip", Findings.Hanging.BLUE)));
    }

    private static Question<String> name(Findings before, List<Findings.DimmerUse> uses) {
        boolean first = uses.stream().noneMatch(use -> use.name().equals("work"));
        return new Question<>(
                first ? "What is its name? Enter means work." : "What is its name?",
                List.of(),
                "The built-in looks light the one named work, to see and film by.",
                line -> Question.readName(line.isEmpty() && first ? "work" : line, taken(before, uses)));
    }

    private static List<String> taken(Findings before, List<Findings.DimmerUse> uses) {
        return Stream.concat(before.zones().keySet().stream(), uses.stream().map(Findings.DimmerUse::name))
                .toList();
    }

    private static Question<Integer> milliamps(int full) {
        return new Question<>(
                "How many mA does it take at full? Enter means " + full + ".",
                List.of(),
                "Watts ÷ volts × 1000, by its label; of a colour strip, for this colour alone.",
                line -> line.isEmpty() ? full : TypedNumbers.readWhole(line, 1, full));
    }
}
