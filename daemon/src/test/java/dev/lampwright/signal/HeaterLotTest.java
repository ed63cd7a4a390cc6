package dev.lampwright.signal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.Supplier;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The quality of the time to ready on random heaters, both those used for development and those held out. The bounds are the results plus a
 * margin; {@link ReadyFigures} prints the results for more heaters, and {@link ReadyBound} the best possible ones.
 */
final class HeaterLotTest {
    /**
     * The first heat-up of each heater, and the second: share of the reports at which the truth is within two standard errors, and mean errors at
     * a quarter and a half of the way; all in percent.
     */
    @ParameterizedTest
    @CsvSource({"TWO_BODIES, 93, 17, 11, 93, 10, 7", "CHAINS, 92, 22, 12, 92, 13, 9", "PLATES, 84, 19, 18, 88, 13, 13"})
    void isRightEnoughAndKnowsHowRight(
            HeaterLot lot,
            double firstWithin,
            double firstQuarter,
            double firstHalf,
            double secondWithin,
            double secondQuarter,
            double secondHalf) {
        ReadyErrors.OfLot errors = ReadyErrors.of(lot.heatUps(40, 11));
        assertGood(errors.first(), firstWithin / 100, firstQuarter, firstHalf);
        assertGood(errors.second(), secondWithin / 100, secondQuarter, secondHalf);
    }

    private static void assertGood(ReadyErrors errors, double within, double mostAtQuarter, double mostAtHalf) {
        assertTrue(errors.within() >= within, told(within, errors.within()));
        assertAtMost(mostAtQuarter / 100, errors.at(0.25).mean());
        assertAtMost(mostAtHalf / 100, errors.at(0.5).mean());
        assertTrue(errors.at(0.25).unknown() <= 6, errors.at(0.25)::toString);
    }

    private static void assertAtMost(double most, double value) {
        assertTrue(value <= most, told(most, value));
    }

    private static Supplier<String> told(double bound, double value) {
        return () -> value + " instead of " + bound;
    }
}
