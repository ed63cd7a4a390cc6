package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Facts of the trade. All of them: common practice, no source. */
class TradeFactsTest {
    private static final String BARS = """
            strip.pixels = 10
            dimmers.bars = { channel = 0, volts = 24, full_mA = %d }
            wiring.supplies.bars = { volts = 24, amps = 3, connector_A = 1 }
            wiring.dimmers.bars = { connector_A = 1, load_W = 25 }
            """;

    /** Five white light bars that take about 25 W together draw just over 1 A at 24 V: they do not belong on a header rated 1 A. */
    @Test
    void fiveBarsAreTooMuchForAHeaderOfOneAmpere() {
        assertEquals(1.04, Loads.amps(25, 24), 0.005);
        Plan plan = Rigs.plan(String.format(BARS, 1042));
        assertTrue(plan.over());
        assertEquals(
                Verdict.Severity.OVER, Rigs.verdict(plan, "connector of bars").level());
        assertEquals(
                Verdict.Severity.OVER,
                Rigs.verdict(plan, "connector of supply bars").level());
    }

    /** Whoever tells the controller less than they take is not safe behind its ceiling either. */
    @Test
    void aCurrentToldTooLowIsFoundOut() {
        Plan plan = Rigs.plan(String.format(BARS, 800));
        assertEquals(
                Verdict.Severity.OVER, Rigs.verdict(plan, "connector of bars").level());
        assertEquals(
                "set full_mA of bars to 1042",
                Rigs.verdict(plan, "current of bars").remedy());
    }

    /** An addressable package of a small strip may take about 33 mA at full white: a strip that takes about 0.45 A has 13 or 14. */
    @Test
    void packagesOfASmallStrip() {
        for (int pixels : new int[] {13, 14}) {
            PlannedLights rig = Rigs.of("strip = { pixels = " + pixels + ", channel_mA = 11, idle_mA = 0 }");
            assertEquals(0.45, new Loads(rig).full(0), 0.033 / 1.5, pixels + " pixels");
        }
    }

    /** 0.6 s on and 0.4 s off: a period of 1 s and a duty of 60 %. */
    @Test
    void sixTenthsOnFourTenthsOff() {
        PlannedLights rig = Rigs.of("""
                strip = { pixels = 1, idle_mA = 0 }
                dimmers.bars = { channel = 0, volts = 24, full_mA = 1000 }
                """);
        double period = 1;
        Demand.Draw draw = Plan.of(rig, List.of(blinking(0.6, 0.4, period)))
                .demands()
                .get(2)
                .draws()
                .get(1);
        assertEquals(0.6, draw.meanAmps() / draw.peakAmps(), 1e-9);
    }

    private static LookDemand blinking(double on, double off, double period) {
        assertEquals(period, on + off, 1e-12);
        return new LookDemand() {
            @Override
            public String name() {
                return "blinking";
            }

            @Override
            public void moments(Taker taker) {
                for (int i = 0; i < 100; i++) {
                    taker.take(new double[3], new double[] {i * period / 100 < on ? 1 : 0});
                }
            }
        };
    }

    /** The same power at 5 V instead of 24 V is 4.8 times the current. */
    @Test
    void lowVoltageIsMuchCurrent() {
        assertEquals(4.8, Loads.amps(25, 5) / Loads.amps(25, 24), 1e-12);
    }
}
