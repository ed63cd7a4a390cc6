package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleSupplier;

/** A strip whose current is measured. */
record CurrentRig(StripModel strip, Setup setup, List<CurrentPattern> patterns) {
    static CurrentRig of(StripModel strip, int ceiling) {
        Setup setup = new Setup(
                strip.pixels(),
                strip.order(),
                Collections.nCopies(strip.order().length(), FittingSetups.USUAL_CHANNEL),
                FittingSetups.USUAL_IDLE,
                0,
                3000,
                WhenSilent.DARK,
                List.of(ceiling),
                List.of());
        return new CurrentRig(strip, setup, CurrentPattern.all(setup));
    }

    List<double[]> rows() {
        return patterns.stream().map(pattern -> pattern.factors(setup)).toList();
    }

    /** What a meter shows at each pattern, in mA. */
    double[] readings(DoubleSupplier noise) {
        return patterns.stream()
                .mapToDouble(pattern -> {
                    Frame frame = new Frame(setup.stripBytes(), 0);
                    pattern.scene(setup).draw(0, frame);
                    return strip.milliamps(frame.strip()) + noise.getAsDouble();
                })
                .toArray();
    }
}
