package dev.lampwright.tool.fit;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;

/** Questions about a supply. */
final class SupplyQuestions {
    private static final double LEAST_VOLTS = 3;

    /** Highest voltage that is safe to touch: 60 V of direct current (IEC 62368-1, ES1; from memory). */
    private static final double MOST_VOLTS = 60;

    private static final double LEAST_AMPS = 0.1;
    private static final double LEAST_FUSE = 0.05;
    private static final double MOST_AMPS = 60;

    private SupplyQuestions() {}

    /**
     * Asks what a supply of its own gives, and for the fuse behind it.
     *
     * @param voltsWords the question for its voltage
     * @param usualVolts what the bare Enter key means
     * @return the supply, with the ceiling that it and its fuse bear
     */
    static Findings.Supply supply(String voltsWords, double usualVolts, FittingBench bench)
            throws LeaveException, IOException {
        double volts = bench.ask(new Question<>(
                voltsWords,
                List.of(),
                "It stands on the supply's label, behind OUTPUT, and on the lights.",
                line -> line.isEmpty() ? usualVolts : Numbers.read(line, LEAST_VOLTS, MOST_VOLTS)));
        OptionalDouble amps = bench.ask(new Question<>(
                "How many amperes can it give? Enter if you do not know.",
                List.of(),
                "It stands on the supply's label, behind OUTPUT, for instance 4 A; 4000 mA are 4.",
                line -> Numbers.readIfThere(line, LEAST_AMPS, MOST_AMPS)));
        OptionalDouble fuse = amps.isEmpty() ? amps : fuse(bench);
        return new Findings.Supply(volts, false, amps, fuse, Ceilings.of(amps, fuse));
    }

    /** No fuse is as if it were not known. */
    private static OptionalDouble fuse(FittingBench bench) throws LeaveException, IOException {
        OptionalDouble fuse = bench.ask(new Question<>(
                "What fuse is in the red wire, in amperes? 0 if there is none, Enter if you do not know.",
                List.of(),
                "The fuse protects the wire behind it. Its rating is printed or stamped on it, for instance T3.15A.",
                line -> line.equals("0") ? OptionalDouble.of(0) : Numbers.readIfThere(line, LEAST_FUSE, MOST_AMPS)));
        return fuse.stream().filter(amps -> amps > 0).findFirst();
    }
}
