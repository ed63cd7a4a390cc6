package dev.lampwright.fit;

import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;

/** Questions about supplies. */
final class Ask {
    private static final double LEAST_FUSE = 0.05;

    private Ask() {}

    static Question<Double> volts(String words, double usual, double least, double most) {
        return new Question<>(
                words,
                List.of(),
                "It stands on the supply's label, behind OUTPUT, and on the lights.",
                line -> line.isEmpty() ? usual : Numbers.read(line, least, most));
    }

    static Question<OptionalDouble> amps(String words, double least, double most) {
        return new Question<>(
                words,
                List.of(),
                "It stands on the supply's label, behind OUTPUT, for instance 4 A; 4000 mA are 4.",
                line -> Numbers.readIfThere(line, least, most));
    }

    /** Asks for the fuse; none is as if it were not known. */
    static OptionalDouble fuse(Bench bench, double most) throws LeaveException, IOException {
        OptionalDouble fuse = bench.ask(new Question<>(
                "What fuse is in the red wire, in amperes? 0 if there is none, Enter if you do not know.",
                List.of(),
                "The fuse protects the wire behind it. Its rating is printed or stamped on it, for instance T3.15A.",
                line -> line.equals("0") ? OptionalDouble.of(0) : Numbers.readIfThere(line, LEAST_FUSE, most)));
        return fuse.stream().filter(amps -> amps > 0).findFirst();
    }
}
