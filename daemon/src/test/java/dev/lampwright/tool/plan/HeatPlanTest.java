package dev.lampwright.tool.plan;

import static dev.lampwright.testing.Bounds.assertAtLeast;
import static dev.lampwright.testing.Bounds.assertAtMost;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.tool.plan.Verdict.Severity;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whole rigs that are too warm somewhere, and what the plan says about them. Currents next to them are calculated by hand, or by
 * {@link TwoRails}.
 */
class HeatPlanTest {
    private static final String COPPER = "the strip's own copper";

    /** 24 V, 60 pixels of 181 mA: 10.86 A from one end through copper of 35 µm × 2.5 mm. */
    private static final String STRIP_24_V = """
            supply = { volts = 24, ceiling_mA = 11000 }
            strip = { pixels = 60, channel_mA = 60 }
            wiring.supplies.strip = { volts = 24, amps = 15 }
            wiring.strip = { wire = "12 AWG", fuse_A = 16, pixels_per_m = 60 }
            """;

    /** A lamp of 4 A under a ceiling of 1 A. */
    private static final String LAMP = """
            strip = { pixels = 1 }
            dimmers.lamp = { channel = 0, volts = 24, full_mA = 4000, ceiling_mA = 1000 }
            wiring.supplies.lamp = { volts = 24, amps = 2 }
            wiring.dimmers.lamp = { wire = "24 AWG", fuse_A = 1.6, connector_A = 2 }
            """;

    private static Verdict verdict(String rig, String subject) {
        return Rigs.verdict(Rigs.plan(rig), subject);
    }

    @Test
    void aStripsOwnCopperIsJudged() {
        Plan plan = Rigs.plan(STRIP_24_V);
        assertTrue(plan.over());
        Verdict verdict = Rigs.verdict(plan, COPPER);
        assertEquals(Severity.OVER, verdict.level());
        assertEquals(66, verdict.figure().value(), 0.5, verdict.what());
        assertTrue(
                verdict.figure().source().contains("IPC-2221"), verdict.figure().source());
        assertTrue(verdict.what().contains("assumed"), verdict.what());
        assertTrue(verdict.remedy().startsWith("feed the strip at 2 points"), verdict.remedy());
    }

    /** The segment's current by a network that shares no code with the plan: 59 of 60 pixels are after it. */
    @Test
    void theWorstSegmentIsThatOfAnotherSolver() {
        PlannedLights rig = Rigs.of(STRIP_24_V);
        StripModel model = new StripModel(rig);
        double[] amps = model.white();
        double rail = rig.wiring().strip().loopOhmsPerMetre() / 60 / 2 * 1.0786;
        TwoRails network = new TwoRails(24, rail, new double[][] {{0, 0.02}}, amps);
        StripCopper.Worst worst = new StripCopper(rig, model, model.wired()).worst();
        assertEquals(0, worst.between());
        assertEquals(10.68, network.segment(0), 0.005);
        assertEquals(network.segment(0), worst.amps(), 1e-6);
    }

    /** Two points with wires of different length: wire and segment currents of full white, and the voltage at each pixel. */
    @ParameterizedTest
    @CsvSource({"0, 39", "7, 30", "0, 1", "20, 39"})
    void ladderAndTwoRailsAgree(int one, int other) {
        ResistorLadder ladder = new ResistorLadder(5, 40, 0.02, Map.of(one, 0.06, other, 0.18));
        double[] amps = new double[40];
        Arrays.setAll(amps, i -> 0.01 + 0.001 * i);
        TwoRails network = new TwoRails(5, 0.01, new double[][] {{one, 0.03}, {other, 0.09}}, amps);
        double[] volts = ladder.volts(amps);
        for (int i = 0; i < 40; i++) {
            assertEquals(network.volts(i), volts[i], 1e-9);
        }
        assertEquals(network.wire(one, 0.03), Rigs.dot(ladder.wireShares(one), amps), 1e-9);
        assertEquals(network.wire(other, 0.09), Rigs.dot(ladder.wireShares(other), amps), 1e-9);
        for (int i = 0; i < 39; i++) {
            assertEquals(network.segment(i), Rigs.dot(ladder.segmentShares(i), amps), 1e-9, "segment " + i);
        }
    }

    /** Following the plan keeps within the limits: two points, each with the fuse that it names. */
    @Test
    void theCoppersRemedyWorks() {
        Plan plan = Rigs.plan(STRIP_24_V.replace("fuse_A = 16", "fuse_A = 8, points = [0, 59]"));
        assertEquals(Severity.GOOD, Rigs.verdict(plan, COPPER).level());
        assertFalse(plan.over(), plan.verdicts().toString());
    }

    /**
     * Copper of 35 µm × 2.3 mm, 124.8 square mils, is 20 K warmer at 5.93 A and 40 K at 8.05 A. 5.97 A from one end are too much, in the
     * middle each half carries half; and the fuse for it, 5.97 ÷ 0.75 so 8 A, protects the copper.
     */
    @Test
    void feedingTheMiddleIsARemedy() {
        String rig = """
                supply = { volts = 24, ceiling_mA = 9000 }
                strip = { pixels = 1000, channel_mA = 1.99, idle_mA = 0 }
                wiring.strip = { wire = "10 AWG", pixels_per_m = 1000, copper_um = 35, copper_mm = 2.3, points = %d }
                """;
        Verdict verdict = verdict(rig.formatted(0), COPPER);
        assertEquals(Severity.CARE, verdict.level());
        assertTrue(
                verdict.remedy().startsWith("feed the strip in the middle, at pixel 500, with a fuse of 8 A"),
                verdict.remedy());
        assertEquals(Severity.GOOD, verdict(rig.formatted(500), COPPER).level());
    }

    /** Up to 20 K is good and above 40 K over in air of 40 °C; at 60 °C half of that is left to the 80 °C that a WS2812B takes. */
    @ParameterizedTest
    @CsvSource({
        "40, 6.25, GOOD",
        "40, 6.35, CARE",
        "40, 8.5, CARE",
        "40, 8.6, OVER",
        "60, 4.55, GOOD",
        "60, 4.7, CARE",
        "60, 6.35, OVER",
        "80, 0.5, OVER"
    })
    void theCoppersLimits(double celsius, double amps, Severity level) {
        int ceiling = (int) Math.round(1000 * amps);
        Verdict verdict = verdict("""
                supply = { volts = 24, ceiling_mA = %d }
                strip = { pixels = 1000, channel_mA = %s, idle_mA = 0 }
                wiring.strip = { wire = "10 AWG", pixels_per_m = 1000 }
                wiring.ambient_C = %s
                """.formatted(ceiling, amps / 3 * 1.001, celsius), COPPER);
        assertEquals(level, verdict.level(), verdict.what());
    }

    /** Copper of twice the thickness, configured: 66 K become 66 ÷ 2^(0.725 ÷ 0.44) = 21 K, and nothing is assumed. */
    @Test
    void copperThatIsTold() {
        Verdict verdict =
                verdict(STRIP_24_V.replace("fuse_A = 16", "fuse_A = 16, copper_um = 70, copper_mm = 2.5"), COPPER);
        assertEquals(Severity.CARE, verdict.level());
        assertEquals(21, verdict.figure().value(), 0.5);
        assertFalse(verdict.assumed());
    }

    /** √(1 A × 4 A) = 2 A: over the wire's 1.75 A, 125 % of the fuse, all of the connector. Pulses of 4 A lose 4 × (0.364 Ω + …) V and are over the supply's rating. */
    @Test
    void aDimmedLampHeatsByItsRms() {
        Plan plan = Rigs.plan(LAMP);
        WireRun run = plan.runs().get(1);
        assertEquals(1, run.amps(), 1e-9);
        assertEquals(2, run.rmsAmps(), 1e-9);
        assertEquals(4, run.pulseAmps(), 1e-9);
        assertEquals(Severity.OVER, Rigs.verdict(plan, "wire to lamp").level());
        assertEquals(Severity.OVER, Rigs.verdict(plan, "fuse of lamp").level());
        assertEquals(Severity.CARE, Rigs.verdict(plan, "connector of lamp").level());
        Verdict supply = Rigs.verdict(plan, "supply lamp");
        assertEquals(Severity.CARE, supply.level());
        assertEquals(4, supply.figure().value(), 1e-9);
    }

    /** 2 × 3 m of 24 AWG at 40 °C are 0.545 Ω: 2.18 V, 9 %, during each pulse of 4 A (0.54 V by the mean). */
    @Test
    void theDropIsThatOfThePulse() {
        Plan plan =
                Rigs.plan(LAMP.replace("fuse_A = 1.6", "fuse_A = 1.6, length_m = 3, contacts_mohm = 0, fuse_mohm = 0"));
        assertEquals(2.18, plan.runs().get(1).dropVolts(), 0.005);
        assertEquals(Severity.CARE, Rigs.verdict(plan, "voltage at lamp").level());
    }

    /** The ceiling stays a mean: the weakest part is the fuse, which carries 1.2 A all the time, and √(mean × 4) is that at 360 mA. */
    @Test
    void theWeakestPartSaysWhichCeilingItNeeds() {
        Plan plan = Rigs.plan(LAMP);
        CeilingFinder.Needed needed = plan.ceilings().get(plan.ceilings().size() - 1);
        assertEquals(new CeilingFinder.Needed(1, "fuse of lamp", 360), needed);
        Plan lowered = Rigs.plan(LAMP.replace("ceiling_mA = 1000", "ceiling_mA = 360"));
        for (String part : List.of("wire to lamp", "fuse of lamp", "connector of lamp")) {
            assertEquals(Severity.GOOD, Rigs.verdict(lowered, part).level(), part);
        }
        Plan more = Rigs.plan(LAMP.replace("ceiling_mA = 1000", "ceiling_mA = 361"));
        assertEquals(Severity.CARE, Rigs.verdict(more, "fuse of lamp").level());
    }

    /** A strip's mean under a ceiling of 4 A with 9.15 A of full white is 6 A RMS if its pixels pulse together. */
    @Test
    void aStripIsTakenToPulseTogetherUntilAMeterSaysOtherwise() {
        String rig = """
                supply.ceiling_mA = 4000
                strip.pixels = 150
                wiring.strip.wire = "18 AWG"
                """;
        WireRun together = Rigs.plan(rig).runs().get(0);
        assertEquals(Math.sqrt(35.83), together.rmsAmps(), 1e-3);
        assertEquals(9.15, together.pulseAmps(), 1e-9);
        assertTrue(verdict(rig, "wire to the strip at pixel 0").what().contains("assumed"));
        WireRun apart =
                Rigs.plan(rig + "wiring.strip.pulses = \"apart\"\n").runs().get(0);
        assertEquals(4, apart.rmsAmps(), 0.05);
        String words = String.join(" ", PlanText.of(Rigs.plan(rig))).replaceAll("\\s+", " ");
        assertTrue(words.contains("A true-RMS meter settles it"), words);
    }

    /** 18 AWG can carry 8 A; the load is 3 A, the fuse 4 A, and the connector is rated 3 A. Nothing but the connector is at fault. */
    @Test
    void theConnectorIsNamedWhereItIsTheWeakPart() {
        String rig = """
                strip.pixels = 1
                dimmers.lamp = { channel = 0, volts = 24, full_mA = 3000 }
                wiring.dimmers.lamp = { wire = "%s AWG", fuse_A = 4, connector_A = %s }
                """;
        for (int gauge : new int[] {18, 16, 14, 12, 10}) {
            Verdict verdict = verdict(rig.formatted(gauge, 3), "fuse of lamp");
            assertEquals(Severity.OVER, verdict.level());
            assertTrue(verdict.remedy().startsWith("use a connector rated at least 4.0 A"), verdict.remedy());
            assertFalse(verdict.remedy().contains("AWG"), verdict.remedy());
        }
        Plan fixed = Rigs.plan(rig.formatted(18, 4));
        assertFalse(fixed.over());
        assertEquals(Severity.GOOD, Rigs.verdict(fixed, "fuse of lamp").level());
        assertEquals(Severity.GOOD, Rigs.verdict(fixed, "connector of lamp").level());
    }

    @Test
    void wireAndConnectorAreNamedTogetherWhereBothAreWeak() {
        Verdict verdict = verdict("""
                strip.pixels = 1
                dimmers.lamp = { channel = 0, volts = 24, full_mA = 3000 }
                wiring.dimmers.lamp = { wire = "24 AWG", fuse_A = 4, connector_A = 3 }
                """, "fuse of lamp");
        assertTrue(
                verdict.remedy()
                        .startsWith("take 20 AWG, which may carry 5.50 A, and use a connector rated at least 4.0 A"),
                verdict.remedy());
    }

    /** Everyday blade fuses are as good as any. */
    @ParameterizedTest
    @ValueSource(strings = {"3", "7.5"})
    void bladeFuses(String amps) {
        String rig = """
                supply.ceiling_mA = 2000
                strip = { pixels = 30, channel_mA = 12 }
                wiring.strip = { wire = "16 AWG", fuse_A = %s }
                """.formatted(amps);
        assertEquals(Severity.GOOD, verdict(rig, "fuse of the strip at pixel 0").level());
    }

    /** 8.00 A on what is rated 8.00 A: 192 W at 24 V on 18 AWG. Rounding does not count, and 0.1 mA does. */
    @Test
    void equalIsWithin() {
        Verdict verdict = verdict("""
                strip.pixels = 1
                wiring.bundled = 1
                dimmers.lamp = { channel = 0, volts = 24, full_mA = 8000 }
                wiring.dimmers.lamp = { wire = "18 AWG", load_W = 192 }
                """, "wire to lamp");
        assertEquals(Severity.GOOD, verdict.level(), verdict.what());
        assertTrue(Verdict.Figure.atMost(8 + 1e-10, 8, "A", "").within(1));
        assertFalse(Verdict.Figure.atMost(8.0001, 8, "A", "").within(1));
    }

    /** The strip's wire at exactly what it can carry. */
    @Test
    void aStripAtWhatItsWireMayCarry() {
        Verdict verdict = verdict("""
                supply = { volts = 24, ceiling_mA = 8000 }
                strip = { pixels = 160, channel_mA = 16.3, idle_mA = 1.1 }
                wiring.bundled = 1
                wiring.strip = { wire = "18 AWG", pixels_per_m = 60 }
                """, "wire to the strip at pixel 0");
        assertEquals(8, verdict.figure().value(), 1e-9);
        assertEquals(Severity.GOOD, verdict.level(), verdict.what());
    }

    @Test
    void sharesOfAVoltageAreWrittenShort() {
        PlannedLights rig = Rigs.of("supply.volts = 12\nstrip.pixels = 3\n");
        assertEquals("8.4", rig.wiring().defaults().get("wiring.strip.least_V"));
        assertEquals("10.8", rig.wiring().defaults().get("wiring.strip.full_colour_V"));
    }

    /**
     * A strip of 12 V has groups of three as pixels, 20 a metre at 60 LEDs: without the key that is assumed, the voltages are the same, and
     * the plan asks for it.
     */
    @Test
    void aboveFiveVoltsThePlanAsksForThePixelsInAMetre() {
        String rig = """
                supply = { volts = 12, ceiling_mA = 5000 }
                strip.pixels = 80
                wiring.strip.wire = "16 AWG"
                """;
        Plan untold = Rigs.plan(rig);
        Plan told = Rigs.plan(rig + "wiring.strip.pixels_per_m = 20\n");
        assertEquals(told.judged().lowest(), untold.judged().lowest(), 1e-12);
        Verdict asked = Rigs.verdict(untold, "length of the strip");
        assertEquals(Severity.OPEN, asked.level());
        assertTrue(asked.remedy().contains("pixels_per_m"), asked.remedy());
        assertTrue(
                told.verdicts().stream().noneMatch(verdict -> verdict.subject().equals("length of the strip")));
        assertTrue(Rigs.plan("strip.pixels = 80\n").verdicts().stream()
                .noneMatch(verdict -> verdict.subject().equals("length of the strip")));
    }

    /**
     * 12 m of 22 AWG there and back at 40 °C: 1.37 Ω, with 40 mΩ of contacts and 40 of a fuse of 2.5 A, so 4.9 V drive 3.4 A: 1.35 of 2.5
     * A. A fuse is certain to blow from 2.1 on.
     */
    @Test
    void aLoopThatCannotBlowItsFuse() {
        String rig = """
                supply.ceiling_mA = 2000
                strip.pixels = 54
                wiring.strip = { wire = "22 AWG", fuse_A = 2.5, length_m = 12 }
                """;
        Plan plan = Rigs.plan(rig);
        assertEquals(4.9 / (24 * 0.05291 * 1.0786 + 0.08), plan.runs().get(0).shortAmps(), 0.01);
        Verdict verdict = Rigs.verdict(plan, "short at the end of the wire to the strip at pixel 0");
        assertEquals(Severity.CARE, verdict.level());
        assertEquals(5.25, verdict.figure().limit(), 1e-9);
        assertEquals("take 18 AWG, or shorten the wire", verdict.remedy());
        Verdict fixed = verdict(rig.replace("22 AWG", "18 AWG"), verdict.subject());
        assertEquals(Severity.GOOD, fixed.level());
    }

    /** Long feeds: thicker wire and more points together take less copper than either alone, and work as stated. */
    @Test
    void thickerWireAndMorePointsTogether() {
        PlannedLights rig = Rigs.of("""
                supply.ceiling_mA = 2000
                strip.pixels = 54
                wiring.strip = { wire = "22 AWG", length_m = 12 }
                """);
        StripModel model = new StripModel(rig);
        Remedies remedies = Remedies.of(model, rig, 4.5);
        Remedies.Both both = remedies.both().orElseThrow();
        assertTrue(both.points().size() < remedies.points().size());
        assertTrue(both.points().size() > 1);
        assertAtLeast(
                4.5, model.lowest(model.ladder(both.wire(), Remedies.wired(both.points(), Remedies.longest(rig)))));
        String remedy =
                Rigs.verdict(Plan.of(rig, List.of()), "voltage along the strip").remedy();
        assertTrue(
                remedy.contains(
                        "take " + both.wire().label() + " to " + both.points().size() + " points"),
                remedy);
    }

    /** Contacts, fuse and tolerance are in the network: each costs what Ohm says. */
    @Test
    void contactsFuseAndToleranceCount() {
        String rig = "supply.ceiling_mA = 2000\nstrip.pixels = 40\n" + Rigs.IDEAL;
        double ideal = Rigs.plan(rig).judged().lowest();
        double contacts = Rigs.plan(rig.replace("contacts_mohm = 0", "contacts_mohm = 40"))
                .judged()
                .lowest();
        double fuse = Rigs.plan(rig.replace("fuse_mohm = 0", "fuse_mohm = 50"))
                .judged()
                .lowest();
        double low = Rigs.plan(rig.replace("tolerance_percent = 0", "tolerance_percent = 5"))
                .judged()
                .lowest();
        assertEquals(2 * 0.040, ideal - contacts, 1e-9);
        assertEquals(2 * 0.050, ideal - fuse, 1e-9);
        assertEquals(0.25, ideal - low, 1e-9);
    }

    /**
     * 24 AWG in air of 65 °C: IEC 60204-1 has 4.3 × √(5 ÷ 30) = 1.76 A; at 68 °C 1.1 A, less than half the chassis figure. At 90 °C nothing
     * is left for PVC.
     */
    @Test
    void warmAirTakesFromWiresAndConnectors() {
        String rig = """
                strip = { pixels = 10, channel_mA = 12 }
                wiring.bundled = 1
                wiring.strip = { wire = "24 AWG", connector_A = 3 }
                wiring.ambient_C = %d
                """;
        assertEquals(
                1.75,
                verdict(rig.formatted(60), "wire to the strip at pixel 0")
                        .figure()
                        .limit(),
                1e-3);
        assertEquals(
                1.12,
                verdict(rig.formatted(68), "wire to the strip at pixel 0")
                        .figure()
                        .limit(),
                0.02);
        Verdict hot = verdict(rig.formatted(90), "wire to the strip at pixel 0");
        assertEquals(Severity.OVER, hot.level());
        assertTrue(hot.remedy().contains("insulation_C"), hot.remedy());
        assertEquals(
                3 * Math.sqrt(15.0 / 30),
                verdict(rig.formatted(70), "connector of the strip at pixel 0")
                        .figure()
                        .limit(),
                1e-9);
    }

    /** The pixels' PWM is assumed until it is configured. */
    @Test
    void anAssumptionNeverHeadsTheList() {
        for (String rig : List.of(
                "strip.pixels = 10\n",
                STRIP_24_V,
                "strip = { pixels = 10, channel_mA = 12 }\nwiring.supplies.s = { volts = 5, amps = 2 }\nwiring.strip.fuse_A = 0.5\n")) {
            List<Verdict> verdicts = Rigs.plan(rig).verdicts();
            assertFalse(verdicts.get(0).assumed(), verdicts.get(0).toString());
            assertTrue(verdicts.stream().anyMatch(Verdict::assumed));
        }
        Plan told = Rigs.plan("strip.pixels = 10\nwiring.strip.pwm_Hz = 400\n");
        assertFalse(Rigs.verdict(told, "PWM of the strip's pixels").assumed());
    }

    @Test
    void everyNumberHasItsSource() {
        for (String rig : List.of("strip.pixels = 10\n", STRIP_24_V, LAMP, LAMP + "supply.volts = 5.4\n")) {
            for (Verdict verdict : Rigs.plan(rig).verdicts()) {
                assertFalse(verdict.figure().source().isBlank(), verdict.toString());
            }
        }
    }

    /** An unused output has no wire, no fuse, no verdict and no place in the drawing. */
    @Test
    void anUnusedDimmerIsNotThere() {
        String rig = """
                strip.pixels = 10
                dimmers.spare = { channel = 0, unused = true }
                dimmers.work = { channel = 2, volts = 24, full_mA = 800 }
                """;
        Plan plan = Rigs.plan(rig);
        assertEquals(2, plan.runs().size());
        assertTrue(
                plan.verdicts().stream().noneMatch(verdict -> verdict.toString().contains("spare")));
        assertFalse(PlanPicture.of(plan).contains("spare"));
        assertTrue(String.join("\n", PlanText.of(plan)).lines().noneMatch(line -> line.contains("spare")));
        assertEquals(0.8, plan.demands().get(0).draws().get(1).peakAmps(), 1e-9);
        assertAtMost(0.62, plan.demands().get(0).draws().get(0).peakAmps());
    }
}
