package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Tries the controller's dimmers one by one, and asks what is on each. */
final class DimmersStep implements Step {
    private static final double USUAL_VOLTS = 24;
    private static final double SHARE = 0.3;
    private static final double USED_SHARE = 0.9;
    private static final int MOST_MILLIAMPS = 65_535;

    private final Collection<Integer> inUse;
    private final Collection<String> names;

    /** For a controller without known lights. */
    DimmersStep() {
        this(List.of(), List.of());
    }

    /**
     * For a controller that already has lights, which are left alone.
     *
     * @param inUse dimmers to skip
     * @param names names of the lights on them
     */
    DimmersStep(Collection<Integer> inUse, Collection<String> names) {
        this.inUse = List.copyOf(inUse);
        this.names = List.copyOf(names);
    }

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
        List<Integer> free = IntStream.range(0, outputs)
                .filter(output -> !inUse.contains(output))
                .boxed()
                .toList();
        if (free.isEmpty()) {
            bench.say(
                    outputs == 0
                            ? Phrase.of("no_dimmers", "The controller has no dimmers.")
                            : Phrase.of("no_free_dimmer", "The controller has no dimmer without a light."));
            return before;
        }
        bench.darken();
        boolean any = bench.ask(Question.yesOrNo(
                        "The controller has " + outputs
                                + (outputs == free.size()
                                        ? " dimmers. Are there lights on some of them, each with its own MOSFET?"
                                        : " dimmers. Is there a light on one that the file does not name, with its own"
                                                + " MOSFET?"),
                        "A dimmer switches a plain light: a white work light, or one colour of a plain colour strip.")
                .coded(outputs == free.size() ? "dimmers_any" : "dimmers_more", "count", outputs));
        return any ? fed(before, outputs, free, bench) : before;
    }

    private Findings fed(Findings before, int outputs, List<Integer> free, FittingBench bench)
            throws LeaveException, IOException {
        Phrase volts = Phrase.of("dimmers_volts", "How many volts does their supply give? Enter means 24.");
        Findings.Supply supply = SupplyStep.askSupply(volts, USUAL_VOLTS, bench);
        if (supply.amps().isEmpty() || supply.fuseAmps().isEmpty()) {
            bench.say(Phrase.of(
                    "dimmers_unknown",
                    "While supply and fuse are unknown, they stay dark. Find out, and come back with b; or write"
                            + " [dimmers] into the file by hand."));
            return before;
        }
        OptionalInt strongest = bench.ask(new Question<OptionalInt>(
                        "How many mA does the strongest of these lights take at full, by its label (watts ÷ volts × 1000)?"
                                + " Enter if you do not know.",
                        "It keeps the lights below their supply's ceiling of " + supply.ceilingMilliamps()
                                + " mA while they are tried. Without it, each light is assumed to be as strong as that ceiling.",
                        line -> line.isEmpty()
                                ? OptionalInt.empty()
                                : OptionalInt.of(TypedNumbers.readWhole(line, 1, MOST_MILLIAMPS)))
                .coded("dimmers_strongest", "ceiling", supply.ceilingMilliamps())
                .in(Form.whole(1, MOST_MILLIAMPS).skipped("unknown")));
        return tried(before, supply, strongest, outputs, free, bench);
    }

    private Findings tried(
            Findings before,
            Findings.Supply supply,
            OptionalInt strongest,
            int outputs,
            List<Integer> free,
            FittingBench bench)
            throws LeaveException, IOException {
        int full = strongest.orElse(supply.ceilingMilliamps());
        Setup setup = FittingSetups.withDimmers(
                FittingSetups.of(before), supply.ceilingMilliamps(), Collections.nCopies(outputs, full));
        double share = Math.min(SHARE, USED_SHARE * supply.ceilingMilliamps() / full);
        List<Findings.DimmerUse> uses =
                new ArrayList<>(Collections.nCopies(outputs, new Findings.DimmerUse(Findings.Hanging.NOTHING, "", 1)));
        for (int output : free) {
            bench.show(setup, Scenes.dimmer(output, share));
            Optional<Findings.Hanging> what = bench.ask(what(output, free));
            if (what.isEmpty()) {
                break;
            }
            if (what.get() != Findings.Hanging.NOTHING) {
                String name = what.get() == Findings.Hanging.WHITE ? bench.ask(name(before, uses)) : "";
                uses.set(output, new Findings.DimmerUse(what.get(), name, bench.ask(milliamps(strongest))));
            }
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

    private static Question<Optional<Findings.Hanging>> what(int output, List<Integer> free) {
        return Question.choice(
                        "Dimmer " + output + " is on, at less than a third (" + (free.indexOf(output) + 1) + " of "
                                + free.size() + "). What lights?",
                        "If it is one colour of a plain colour strip, choose which; you give a white light its own name.",
                        List.of(
                                option("0", "nothing", "dark", Findings.Hanging.NOTHING),
                                option("1", "a white light", "hung_white", Findings.Hanging.WHITE),
                                option("2", "red of a plain colour strip", "hung_red", Findings.Hanging.RED),
                                option("3", "green of a plain colour strip", "hung_green", Findings.Hanging.GREEN),
                                option("4", "blue of a plain colour strip", "hung_blue", Findings.Hanging.BLUE),
                                new Question.Option<>(
                                        "done", "there are no more lights", Optional.empty(), "dimmers_done")))
                .coded("dimmers_what", "dimmer", output, "number", free.indexOf(output) + 1, "of", free.size());
    }

    private static Question.Option<Optional<Findings.Hanging>> option(
            String key, String words, String code, Findings.Hanging hanging) {
        return new Question.Option<>(key, words, Optional.of(hanging), code);
    }

    private Question<String> name(Findings before, List<Findings.DimmerUse> uses) {
        List<String> taken = Stream.of(
                        before.zones().keySet().stream(),
                        names.stream(),
                        uses.stream().map(Findings.DimmerUse::name))
                .flatMap(each -> each)
                .toList();
        boolean first = !taken.contains("work");
        return new Question<String>(
                        first ? "What is its name? Enter means work." : "What is its name?",
                        "The built-in looks light the one named work, to see and film by.",
                        line -> Question.readName(line.isEmpty() && first ? "work" : line, taken))
                .coded("dimmers_name")
                .in(first ? Form.TEXT.usually("work") : Form.TEXT);
    }

    private static Question<Integer> milliamps(OptionalInt strongest) {
        int most = strongest.orElse(MOST_MILLIAMPS);
        return new Question<Integer>(
                        "How many mA does it take at full?"
                                + (strongest.isPresent() ? " Enter means " + most + "." : ""),
                        "Watts ÷ volts × 1000, by its label; of a colour strip, for this colour alone.",
                        line -> line.isEmpty() && strongest.isPresent() ? most : TypedNumbers.readWhole(line, 1, most))
                .coded("dimmers_full")
                .in(strongest.isPresent() ? Form.whole(1, most).usually(Integer.toString(most)) : Form.whole(1, most));
    }
}
