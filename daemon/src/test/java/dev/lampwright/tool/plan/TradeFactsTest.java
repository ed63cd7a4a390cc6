package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Consequences of P = U·I, with our own round figures. */
class TradeFactsTest {
    private static final String LAMPS = """
            strip.pixels = 10
            dimmers.lamps = { channel = 0, volts = 24, full_mA = %d }
            wiring.supplies.lamps = { volts = 24, amps = 3, connector_A = 1 }
            wiring.dimmers.lamps = { connector_A = 1, load_W = 36 }
            """;

    /** P = U·I: three lamps of 12 W draw 1.5 A together at 24 V, which is too much for a header rated 1 A. */
    @Test
    void lampsOf36WattsAreTooMuchForAHeaderOfOneAmpere() {
        assertEquals(1.5, Loads.amps(36, 24), 1e-12);
        Plan plan = Rigs.plan(String.format(LAMPS, 1500));
        assertTrue(plan.over());
        assertEquals(
                Verdict.Severity.OVER, Rigs.verdict(plan, "connector of lamps").level());
        assertEquals(
                Verdict.Severity.OVER,
                Rigs.verdict(plan, "connector of supply lamps").level());
    }

    /** If the controller is configured for less than the lights draw, its ceiling does not protect either. */
    @Test
    void aCurrentToldTooLowIsFoundOut() {
        Plan plan = Rigs.plan(String.format(LAMPS, 800));
        assertEquals(
                Verdict.Severity.OVER, Rigs.verdict(plan, "connector of lamps").level());
        assertEquals(
                "set full_mA of lamps to 1500",
                Rigs.verdict(plan, "current of lamps").remedy());
    }

    /** Three channels of 10 mA are 30 mA a pixel at full white: ten pixels draw 0.3 A. */
    @Test
    void pixelsAtFullWhite() {
        PlannedLights rig = Rigs.of("strip = { pixels = 10, channel_mA = 10, idle_mA = 0 }");
        assertEquals(0.3, new Loads(rig).full(0), 1e-9);
    }

    /** A quarter of a second on and three quarters off: a period of 1 s and a duty of 25 %. */
    @Test
    void aQuarterOn() {
        PlannedLights rig = Rigs.of("""
                strip = { pixels = 1, idle_mA = 0 }
                dimmers.lamps = { channel = 0, volts = 24, full_mA = 1000 }
                """);
        double period = 1;
        Demand.Draw draw = Plan.of(rig, List.of(blinking(0.25, 0.75, period)))
                .demands()
                .get(2)
                .draws()
                .get(1);
        assertEquals(0.25, draw.meanAmps() / draw.peakAmps(), 1e-9);
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

    /** The same power at 12 V instead of 24 V is twice the current. */
    @Test
    void lowVoltageIsMuchCurrent() {
        assertEquals(2, Loads.amps(36, 12) / Loads.amps(36, 24), 1e-12);
    }
}
