package dev.lampwright.tool.plan;

import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The verdicts on whole rigs. Currents and voltages next to them are calculated by hand. */
class PlanTest {
    private static final String SUPPLY = "voltage along the strip";

    /** 10 pixels of 36 + 1 mA: 0.37 A. */
    private static final String SMALL = """
            strip = { pixels = 10, channel_mA = 12 }
            wiring.supplies.strip = { volts = 5, amps = 2, connector_A = 1 }
            wiring.strip = { fuse_A = 0.63, connector_A = 1 }
            """;

    @Test
    void aGoodRigHasNothingOver() {
        Plan plan = Rigs.plan(SMALL);
        assertFalse(plan.over(), plan.verdicts().toString());
        assertEquals(0.37, plan.demands().get(0).draws().get(0).peakAmps(), 1e-9);
        assertEquals(0.37, plan.demands().get(1).draws().get(0).peakAmps(), 1e-9);
        assertEquals(0.37, plan.runs().get(0).amps(), 1e-9);
        for (String subject : List.of(
                "supply strip",
                "connector of supply strip",
                "connector of the strip at pixel 0",
                "wire to the strip at pixel 0",
                "fuse of the strip at pixel 0",
                SUPPLY,
                "data level",
                "frame rate")) {
            assertEquals(Verdict.Severity.GOOD, Rigs.verdict(plan, subject).level(), subject);
        }
    }

    @Test
    void theWorstComesFirst() {
        List<Verdict> verdicts =
                Rigs.plan("strip.pixels = 300\nsupply.ceiling_mA = 9000\n").verdicts();
        for (int i = 1; i < verdicts.size(); i++) {
            Verdict before = verdicts.get(i - 1);
            Verdict after = verdicts.get(i);
            assertAtMost(0, before.level().compareTo(after.level()));
            assertTrue(before.level() != after.level()
                    || before.assumed() != after.assumed()
                    || before.figure().used() >= after.figure().used());
        }
        assertEquals(Verdict.Severity.OVER, verdicts.get(0).level());
        assertEquals(Verdict.Severity.GOOD, verdicts.get(verdicts.size() - 1).level());
    }

    /** 80 % of 0.46 A is 0.368 A, less than 0.37 A; 0.36 A is less than 0.37 A; 0.37 ÷ 0.8 is 0.4625 A. */
    @Test
    void theEightyPercentRule() {
        String rated = "amps = 2";
        Verdict close = Rigs.verdict(Rigs.plan(SMALL.replace(rated, "amps = 0.46")), "supply strip");
        assertEquals(Verdict.Severity.CARE, close.level());
        assertEquals("fit a supply of 5 V and at least 0.5 A; or lower supply.ceiling_mA to 368 mA", close.remedy());
        assertEquals(
                Verdict.Severity.OVER,
                Rigs.verdict(Rigs.plan(SMALL.replace(rated, "amps = 0.36")), "supply strip")
                        .level());
        assertEquals(
                Verdict.Severity.GOOD,
                Rigs.verdict(Rigs.plan(SMALL.replace(rated, "amps = 0.47")), "supply strip")
                        .level());
        assertEquals(
                Verdict.Severity.OPEN,
                Rigs.verdict(Rigs.plan(SMALL.replace(", amps = 2", "")), "supply strip")
                        .level());
    }

    @Test
    void theCeilingCounts() {
        Plan plan = Rigs.plan(SMALL.replace("amps = 2", "amps = 0.3") + "supply.ceiling_mA = 200\n");
        Verdict verdict = Rigs.verdict(plan, "supply strip");
        assertEquals(Verdict.Severity.GOOD, verdict.level());
        assertEquals(0.2, verdict.figure().value(), 1e-9);
        assertTrue(verdict.what().contains("full white would be 0.37 A"), verdict.what());
    }

    /**
     * A fuse: at least 0.37 ÷ 0.75 = 0.493 A, so 0.5 A; 20 AWG can carry 5.5 A. A fuse of 0.4 A carries 0.3 A continuously. Pixels that
     * draw 10 mA dark and 360 mA more in pulses of duty d have a mean square of 0.01² + (2 × 0.01 × 0.36 + 0.36²)·d; 0.3² is d = 0.657, a
     * mean of 246 mA.
     */
    @Test
    void fuses() {
        assertFuse(Verdict.Severity.GOOD, "0.5", "");
        assertFuse(Verdict.Severity.CARE, "0.4", "fit a fuse of 0.5 A; or lower supply.ceiling_mA to 246 mA");
        assertFuse(Verdict.Severity.OVER, "0.315", "fit a fuse of 0.5 A");
        assertFuse(Verdict.Severity.OVER, "6.3", "fit a fuse of 0.5 A");
        assertFuse(Verdict.Severity.CARE, "0.55", "fit a fuse of 0.5 A");
    }

    private static void assertFuse(Verdict.Severity level, String amps, String remedy) {
        Plan plan = Rigs.plan(SMALL.replace("fuse_A = 0.63, connector_A = 1", "fuse_A = " + amps));
        Verdict verdict = Rigs.verdict(plan, "fuse of the strip at pixel 0");
        assertEquals(level, verdict.level(), verdict.what());
        assertEquals(remedy, verdict.remedy());
    }

    @Test
    void aFuseMustGuardTheConnectorToo() {
        Plan plan = Rigs.plan(SMALL.replace("fuse_A = 0.63", "fuse_A = 1.25"));
        assertEquals(
                Verdict.Severity.OVER,
                Rigs.verdict(plan, "fuse of the strip at pixel 0").level());
    }

    @Test
    void aMissingFuseIsNamed() {
        Verdict verdict =
                Rigs.verdict(Rigs.plan("strip = { pixels = 10, channel_mA = 12 }"), "fuse of the strip at pixel 0");
        assertEquals(Verdict.Severity.OPEN, verdict.level());
        assertEquals(
                "fit a slow fuse of 0.5 A for at least 5 V of direct current at the supply's end, and enter it as fuse_A in [wiring.strip]",
                verdict.remedy());
    }

    /** 30 AWG can carry 0.43 A; 0.37 A is within it, but the fuse for it has 0.5 A. A fuse of 0.4 A carries 0.3 A, as above. */
    @Test
    void whereNoFuseFits() {
        Plan plan = Rigs.plan("strip = { pixels = 10, channel_mA = 12 }\nwiring.strip.wire = \"30 AWG\"\n");
        Verdict verdict = Rigs.verdict(plan, "fuse of the strip at pixel 0");
        assertEquals(Verdict.Severity.CARE, verdict.level());
        assertEquals("take 28 AWG, which may carry 0.70 A; or lower supply.ceiling_mA to 246 mA", verdict.remedy());
    }

    /** 20 mA dark and 720 mA in pulses: 0.43² = 0.02² + (2 × 0.02 × 0.72 + 0.72²)·d has d = 0.337, a mean of 262 mA. */
    @Test
    void aThinWire() {
        Plan plan = Rigs.plan(
                "strip = { pixels = 20, channel_mA = 12 }\nsupply.ceiling_mA = 900\nwiring.strip.wire = \"30 AWG\"\n");
        Verdict verdict = Rigs.verdict(plan, "wire to the strip at pixel 0");
        assertEquals(Verdict.Severity.OVER, verdict.level());
        assertEquals("take 26 AWG, which may carry 1.10 A; or lower supply.ceiling_mA to 262 mA", verdict.remedy());
        assertEquals(0.43, verdict.figure().limit(), 1e-9);
    }

    /** By hand: 1 A at the far end of 0.1 Ω a segment, 9 segments, and a short wire: 0.9 V less. The datasheet's 4.5 V are not kept. */
    @Test
    void colourShiftsAtTheFarEnd() {
        Plan plan = Rigs.plan("""
                supply.ceiling_mA = 1000
                strip = { pixels = 10, channel_mA = 65, idle_mA = 0.001 }
                wiring.strip.wire = "10 AWG"
                wiring.strip.length_m = 0.01
                wiring.strip.loop_ohm_per_m = 1
                wiring.strip.pixels_per_m = 10
                wiring.wire_C = 20
                """ + Rigs.IDEAL);
        Verdict verdict = Rigs.verdict(plan, SUPPLY);
        assertEquals(Verdict.Severity.CARE, verdict.level());
        StripCase judged = plan.judged();
        assertEquals(9, judged.lowestAt());
        // Five pixels of 195 mA and one of the rest, from the far end: 0.195 × (0.9 + 0.8 + 0.7 + 0.6 + 0.5) + 0.025 ×
        // 0.4 V at pixel 9.
        assertEquals(5 - 0.195 * 3.5 - 0.025 * 0.4, judged.lowest(), 1e-3);
        assertEquals("connect the wire at pixel 5 instead", verdict.remedy());
    }

    @Test
    void brownOutIsOver() {
        Plan plan = Rigs.plan("strip.pixels = 300\nsupply.ceiling_mA = 9000\n");
        Verdict verdict = Rigs.verdict(plan, SUPPLY);
        assertEquals(Verdict.Severity.OVER, verdict.level());
        assertTrue(verdict.what().contains("brown out"), verdict.what());
        assertTrue(verdict.remedy().contains("points are enough, the fewest"), verdict.remedy());
    }

    /** WS2812B datasheet: 5.3 V is the absolute maximum. */
    @Test
    void tooManyVolts() {
        assertEquals(
                Verdict.Severity.OVER,
                Rigs.verdict(Rigs.plan("strip.pixels = 2\nsupply.volts = 5.5\n"), "voltage of the strip")
                        .level());
    }

    /** WS2812B datasheet: V_IH is 0.7 × VDD, 3.5 V at 5 V. */
    @Test
    void dataLevel() {
        String three = "strip.pixels = 2\nwiring.board.logic_V = 3.3\n";
        Verdict verdict = Rigs.verdict(Rigs.plan(three), "data level");
        assertEquals(Verdict.Severity.OVER, verdict.level());
        assertEquals(3.5, verdict.figure().limit(), 1e-9);
        assertEquals(
                Verdict.Severity.GOOD,
                Rigs.verdict(Rigs.plan(three + "wiring.board.data = \"shifted\"\n"), "data level")
                        .level());
        assertEquals(
                Verdict.Severity.GOOD,
                Rigs.verdict(Rigs.plan(three + "supply.volts = 4.6\n"), "data level")
                        .level());
    }

    @Test
    void frameRate() {
        Verdict verdict = Rigs.verdict(Rigs.plan("strip.pixels = 300\n"), "frame rate");
        assertEquals(Verdict.Severity.CARE, verdict.level());
        assertTrue(verdict.remedy().startsWith("set frames_per_s to 36, or a higher baud"), verdict.remedy());
    }

    @Test
    void slowPwm() {
        String light = "strip.pixels = 2\ndimmers.work = { channel = 0, volts = 24, full_mA = 100 }\n";
        assertEquals(
                Verdict.Severity.GOOD,
                Rigs.verdict(Rigs.plan(light), "PWM of work").level());
        Verdict verdict = Rigs.verdict(Rigs.plan(light + "wiring.dimmers.work.pwm_Hz = 490\n"), "PWM of work");
        assertEquals(Verdict.Severity.CARE, verdict.level());
        assertTrue(verdict.what().contains("39 % of modulation"), verdict.what());
    }

    /** 2 × 10 m of 0.5 mm² (39 Ω/km) at 20 °C are 0.78 Ω; 2 A lose 1.56 V, over 5 % of 24 V. */
    @Test
    void aLongWireToALight() {
        Plan plan = Rigs.plan("""
                strip.pixels = 2
                dimmers.work = { channel = 0, volts = 24, full_mA = 2000 }
                wiring.wire_C = 20
                wiring.dimmers.work = { wire = "0.5 mm2", length_m = 10, contacts_mohm = 0, fuse_mohm = 0 }
                """);
        assertEquals(1.56, plan.runs().get(1).dropVolts(), 1e-9);
        Verdict verdict = Rigs.verdict(plan, "voltage at work");
        assertEquals(Verdict.Severity.CARE, verdict.level());
        assertEquals("take 0.75 mm²", verdict.remedy());
    }

    /** 0.37 A and its own 0.05 A on a pin that delivers 0.5 A: 84 %. At 12 V in, (12 − 5) × 0.42 = 2.94 W become heat. */
    @Test
    void aStripOnTheBoard() {
        Plan plan = Rigs.plan("""
                strip = { pixels = 10, channel_mA = 12 }
                wiring.strip.from = "board"
                wiring.board.input_V = 12
                """);
        Verdict verdict = Rigs.verdict(plan, "the board's 5 V pin");
        assertEquals(Verdict.Severity.CARE, verdict.level());
        assertEquals(0.42, verdict.figure().value(), 1e-9);
        assertTrue(verdict.what().contains("turns 2.9 W into heat"), verdict.what());
    }

    /** At a tenth of the current the pin is hardly loaded, but a regulator with 40 V input still turns more than 1 W into heat. */
    @Test
    void aHotRegulator() {
        String cool = """
                strip = { pixels = 1, channel_mA = 1 }
                wiring.strip.from = "board"
                """;
        assertEquals(
                Verdict.Severity.GOOD,
                Rigs.verdict(Rigs.plan(cool), "the board's 5 V pin").level());
        Plan hot = Rigs.plan(cool + "wiring.board.input_V = 40\n");
        assertEquals(
                Verdict.Severity.CARE, Rigs.verdict(hot, "the board's 5 V pin").level());
    }

    @Test
    void aComputerOnTheStripsSupply() {
        Plan plan = Rigs.plan(SMALL + "wiring.computer = { amps = 1.5, supply = \"strip\" }\n");
        assertEquals(1.87, Rigs.verdict(plan, "supply strip").figure().value(), 1e-9);
        assertEquals(Verdict.Severity.CARE, Rigs.verdict(plan, "computer").level());
    }

    /** Kirchhoff again: at full white the wires to the strip carry together what its pixels draw. */
    @Test
    void connectorsShareTheStrip() {
        Plan plan = Rigs.plan("strip.pixels = 30\nwiring.strip = { points = [29, 0, 11], length_m = [2, 1, 1.5] }\n");
        assertEquals(
                List.of("the strip at pixel 0", "the strip at pixel 11", "the strip at pixel 29"),
                plan.runs().stream().map(WireRun::name).toList());
        double sum = plan.demands().get(0).connectors().stream()
                .mapToDouble(Demand.Draw::peakAmps)
                .sum();
        assertEquals(plan.demands().get(0).draws().get(0).peakAmps(), sum, 1e-9);
    }

    /** Limited by the ceiling: a look that demands all of 0.37 A at a ceiling of 0.2 A gets 0.2 A. */
    @Test
    void looksAreMeasuredUnderTheCeiling() {
        PlannedLights rig = Rigs.of(SMALL + "supply.ceiling_mA = 200\n");
        Demand demand = Plan.of(rig, List.of(new Steady(1))).demands().get(2);
        assertEquals(new Demand.Draw(0.2, 0.2, true), demand.draws().get(0));
        Demand.Draw half =
                Plan.of(rig, List.of(new Steady(0.25))).demands().get(2).draws().get(0);
        assertEquals(0.1, half.meanAmps(), 1e-9);
        assertFalse(half.dimmed());
    }

    /** Every channel at the same duty, all the time. */
    private record Steady(double duty) implements LookDemand {
        @Override
        public String name() {
            return "steady";
        }

        @Override
        public void moments(Taker taker) {
            double[] strip = new double[30];
            Arrays.fill(strip, duty);
            taker.take(strip, new double[0]);
            taker.take(strip, new double[0]);
        }
    }
}
