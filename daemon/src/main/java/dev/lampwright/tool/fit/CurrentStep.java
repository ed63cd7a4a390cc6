package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Measures what the strip really draws, if there is a meter, and fits the model of the guards to the readings. */
final class CurrentStep implements Step {
    private static final double MOST_MILLIAMPS = 65_535;
    private static final double MICRO = 1000;
    private static final Question<Boolean> AGAIN = Question.yesOrNo(
                    "Measure again? With n, 20 mA a channel is assumed.",
                    "The meter should be in the strip's wire only, in a range that shows single mA, and must not change range between"
                            + " the readings.")
            .coded("current_again");

    @Override
    public String name() {
        return "current";
    }

    @Override
    public String title() {
        return "measure the current";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        return heated(measured(before, bench), bench);
    }

    /** Recalculates the ceiling, now that the strip's pulse current is known. */
    private static Findings heated(Findings found, FittingBench bench) {
        Findings.Supply supply = found.supply().orElseThrow();
        Setup setup = FittingSetups.of(found);
        double dark = setup.pixels() * setup.darkMicroamps() / MICRO;
        double full = dark
                + setup.pixels()
                        * setup.channelMicroamps().stream()
                                .mapToInt(each -> each)
                                .sum()
                        / MICRO;
        int ceiling = Ceilings.heated(supply.ceilingMilliamps(), supply.fuseAmps(), dark, full);
        if (ceiling == supply.ceilingMilliamps()) {
            return found;
        }
        bench.say(Ceilings.heatedWords(ceiling, supply.fuseAmps(), full));
        return found.withSupply(supply.withCeiling(ceiling));
    }

    private static Findings measured(Findings before, FittingBench bench) throws LeaveException, IOException {
        bench.darken();
        boolean meter = bench.ask(Question.yesOrNo(
                        "Is a meter connected in the strip's red wire, and do you want to measure with it?",
                        "Without one, 20 mA a channel is assumed, which is more than most strips take. Connect a meter into the wire"
                                + " while the supply is off and unplugged; it must be made for the ceiling of "
                                + FittingSetups.ceiling(before) + " mA.")
                .coded("current_meter", "ceiling", FittingSetups.ceiling(before)));
        Setup setup = FittingSetups.of(before);
        while (meter) {
            List<CurrentPattern> patterns = CurrentPattern.all(setup);
            List<Double> readings = measure(patterns, setup, bench);
            if (readings.size() < patterns.size() && !setup.equals(FittingSetups.wary(setup))) {
                bench.say(Phrase.of(
                        "current_darker",
                        "That is more than the ceiling: these pixels take more than was assumed. Again, darker:"));
                setup = FittingSetups.wary(setup);
                continue;
            }
            Optional<CurrentFit> fit = readings.size() < patterns.size()
                    ? Optional.empty()
                    : Optional.of(CurrentFit.of(setup, patterns, readings));
            Optional<Phrase> nonsense = fit.map(CurrentFit::nonsense)
                    .orElse(Optional.of(
                            Phrase.of("current_over", "even dimmed the strip takes more than the ceiling")));
            if (nonsense.isEmpty()) {
                return keep(before, fit.orElseThrow(), setup, bench);
            }
            bench.say(Phrase.of(
                    "current_unfit", "That does not add up: " + nonsense.get().english() + ".", "why", nonsense.get()));
            bench.darken();
            meter = bench.ask(AGAIN);
        }
        return before;
    }

    /** Stops at a lit pattern that draws more than the ceiling; its reading is left out. */
    private static List<Double> measure(List<CurrentPattern> patterns, Setup setup, FittingBench bench)
            throws LeaveException, IOException {
        List<Double> readings = new ArrayList<>();
        for (CurrentPattern pattern : patterns) {
            bench.show(setup, pattern.scene(setup));
            double reading = bench.ask(new Question<Double>(
                            "Reading " + (readings.size() + 1) + " of " + patterns.size() + ", " + pattern.words()
                                    + ": how many mA?",
                            "Wait until the meter is steady, then type what it shows, for instance 123.4. If it shows amperes,"
                                    + " multiply by 1000.",
                            line -> TypedNumbers.read(line, 0, MOST_MILLIAMPS))
                    .coded(
                            "current_reading",
                            "number",
                            readings.size() + 1,
                            "of",
                            patterns.size(),
                            "pattern",
                            pattern.phrase())
                    .in(Form.number(0, MOST_MILLIAMPS)));
            if (pattern.level() > 0 && reading > setup.ceilingsMilliamps().get(0)) {
                return readings;
            }
            readings.add(reading);
        }
        return readings;
    }

    private static Findings keep(Findings before, CurrentFit fit, Setup setup, FittingBench bench) {
        Findings.Currents currents = fit.currents();
        bench.say(Phrase.of("current_takes", "The strip takes, with the standard error of each:"));
        for (int i = 0; i < currents.channels().size(); i++) {
            char channel = setup.order().charAt(i);
            String value = currents.channels().get(i).toString();
            bench.say(Phrase.of(
                    "current_channel",
                    "  " + channel + " of one pixel at full: " + value,
                    "channel",
                    channel,
                    "value",
                    value));
        }
        bench.say(Phrase.of("current_idle", "  one dark pixel: " + currents.idle(), "value", currents.idle()));
        double deviation = Math.round(fit.deviation() * 10) / 10.0;
        bench.say(Phrase.of(
                "current_deviation",
                "The readings differ from the model by " + TypedNumbers.shown(deviation) + " mA (standard deviation).",
                "value",
                deviation));
        return before.withCurrents(currents);
    }
}
