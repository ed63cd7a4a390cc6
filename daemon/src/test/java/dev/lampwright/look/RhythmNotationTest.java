package dev.lampwright.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Groups as they are charted, and custom times. Sources: IHO INT 1, P10.2 to P10.8 (as the Canadian Hydrographic Service's Chart 1 prints
 * them), for notation and rates; IALA Recommendation R1001 for the cardinal marks, East 3, South 6 and a long flash, West 9; the table of
 * rhythmic characters of IALA's NAVGUIDE for Oc(2) and Oc(2+1).
 */
class RhythmNotationTest {
    private static final double STEP_S = 0.005;

    /** How long light (+) and darkness (−) last within a period, in tenths of a second, beginning with the first light. */
    private static String stretches(String text) {
        Rhythm rhythm = Rhythm.parse(text).withEdge(0);
        List<String> stretches = new ArrayList<>();
        int steps = (int) Math.round(rhythm.period() / STEP_S);
        int from = 0;
        for (int i = 1; i <= steps; i++) {
            boolean lit = rhythm.level((i - 0.5) * STEP_S) > 0.5;
            if (i == steps || lit != rhythm.level((i + 0.5) * STEP_S) > 0.5) {
                stretches.add((lit ? "+" : "-") + Math.round(10 * STEP_S * (i - from)));
                from = i;
            }
        }
        return stretches.stream().collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @CsvSource({
        "Q(3) 10s, +5 -5 +5 -5 +5 -75",
        "VQ(3) 5s, +3 -3 +3 -3 +3 -35",
        "Q(9) 15s, +5 -5 +5 -5 +5 -5 +5 -5 +5 -5 +5 -5 +5 -5 +5 -5 +5 -65",
        "Q(6)+LFl 15s, +5 -5 +5 -5 +5 -5 +5 -5 +5 -5 +5 -5 +20 -70",
        "VQ(6)+LFl 10s, +3 -3 +3 -3 +3 -3 +3 -3 +3 -3 +3 -3 +20 -44",
        "Fl(2) 6s, +5 -5 +5 -45",
        "Fl(2+1) 10s, +5 -5 +5 -40 +5 -40",
        "Oc(2) 6s, +30 -10 +10 -10",
        "Oc(2) 13s, +100 -10 +10 -10",
        "Oc(2+1) 12s, +40 -10 +10 -10 +40 -10",
        "Oc(1) 4s, +30 -10",
        "Q(1) 4s, +5 -35",
        "on 0.5s off 1.5s, +5 -15",
        "on 2 s off 1 s, +20 -10",
        "on 0.2s off 0.3s on 0.2s off 1.3s, +2 -3 +2 -13"
    })
    void lastsAsLongAsCharted(String text, String stretches) {
        assertEquals(stretches, stretches(text));
    }

    /** P10.2: an occulting light is lit for longer than it is dark, even in groups. */
    @ParameterizedTest
    @ValueSource(strings = {"Oc 4s", "Oc(2) 6s", "Oc(3) 8s", "Oc(2+1) 12s"})
    void occultingIsLitForLonger(String text) {
        double lit = 0;
        for (String stretch : stretches(text).split(" ", -1)) {
            lit += Double.parseDouble(stretch);
        }
        assertTrue(lit > 0, text);
    }

    /** P10.8: ultra quick is 160 flashes a minute or more; WCAG 2.2 allows at most three in any second. */
    @Test
    void ultraQuickIsAsSlowAsItMayBe() {
        assertEquals(160, 60 / Rhythm.parse("UQ").period(), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Iso(2) 4s",
                "F(2)",
                "F 4s",
                "LFl(2) 10s",
                "UQ(3)",
                "UQ 3s",
                "swell(2) 4s",
                "Q+LFl 15s",
                "Fl(2)+LFl 10s",
                "Q(1)+LFl 15s",
                "Q(3+6)+LFl 25s",
                "Q(3)R 10s",
                "IQ 10s",
                "Al WR 4s",
                "Q(3)10s extra",
                "Tick 1s"
            })
    void whatIsNotUnderstoodIsRefusedWithAllThatIs(String text) {
        String message = refused(text);
        assertTrue(message.startsWith("\"" + text + "\" is not a valid rhythm; "), message);
        assertTrue(message.endsWith(RhythmNotation.UNDERSTOOD), message);
    }

    @Test
    void everyExampleInTheMessageIsUnderstood() {
        for (String example : RhythmNotation.UNDERSTOOD.split(", ", -1)) {
            Rhythm.parse(example.replace("\"", ""));
        }
    }

    @ParameterizedTest
    @CsvSource({
        "Q(3), it needs a period",
        "Q(0) 10s, a group has 1 to 9 flashes",
        "Fl() 6s, a group has 1 to 9 flashes",
        "Fl(2+) 6s, a group has 1 to 9 flashes",
        "Fl(10) 30s, a group has 1 to 9 flashes",
        "Q(3) 3s, its groups are not far enough apart; make its period longer than 3.0 s",
        "Oc(2) 4s, its groups are not far enough apart; make its period longer than 4.0 s",
        "Q(6)+LFl 8s, its light does not fit into its period",
        "on 0s off 1s, give each on and each off more than 0 s",
        "on 86401s off 1s, give each on and each off more than 0 s",
        "on 1s, write \"on 0.5s off 1.5s\"",
        "on 1s off 1s on 2s, write \"on 0.5s off 1.5s\"",
        "on 1s off 1s twice, write \"on 0.5s off 1.5s\""
    })
    void whatIsNearlyRightIsRefusedWithTheReason(String text, String why) {
        assertTrue(refused(text).contains("is not a valid rhythm; " + why), refused(text));
    }

    @Test
    void aNumberThatIsTooLargeToBeOneIsRefused() {
        String number = "9".repeat(400);
        for (String text : List.of("Iso " + number + "s", "Oc(2) " + number + "s", "swell " + number + "s")) {
            assertTrue(refused(text).contains("it needs a period, such as"), text);
        }
        assertTrue(refused("on " + number + "s off 1s").contains("a day at most"));
    }

    private static String refused(String text) {
        return assertThrows(IllegalArgumentException.class, () -> Rhythm.parse(text), text)
                .getMessage();
    }

    @Test
    void aHardEdgeTakesNoTimeAndASoftOneAllThereIs() {
        Rhythm hard = Rhythm.parse("on 1s off 1s").withEdge(0);
        assertEquals(1, hard.level(0));
        assertEquals(1, hard.level(0.999));
        assertEquals(0, hard.level(1.001));
        Rhythm soft = Rhythm.parse("on 1s off 1s").withEdge(1);
        assertEquals(0.5, soft.level(0), 1e-6);
        assertEquals(1, soft.level(0.5), 1e-6);
        assertEquals(0.75, soft.level(0.75), 1e-6);
        assertEquals(0, soft.level(1.5), 1e-6);
        assertEquals(1, Rhythm.parse("on 1s off 3s").longestEdge());
        assertEquals(0.5, Rhythm.parse("Fl(2) 6s").longestEdge());
    }

    /** Light that is on for less than the usual edge still reaches full. */
    @Test
    void aShortFlashReachesFullLight() {
        assertEquals(1, Rhythm.parse("on 0.04s off 1s").level(0.02), 1e-6);
    }

    @Test
    void aPhaseBeginsLater() {
        Rhythm rhythm = Rhythm.parse("swell 4s");
        Rhythm later = rhythm.withPhase(0.25);
        for (double t = 0; t < 9; t += 0.1) {
            assertEquals(rhythm.level(t), later.level(t + 1), 1e-6);
        }
        assertEquals(rhythm, rhythm.withPhase(0));
        assertEquals(rhythm, rhythm.withPhase(1));
        assertEquals(rhythm.level(3), later.level(0), 1e-6);
    }
}
