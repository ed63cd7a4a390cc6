package dev.lampwright.tool.survey;

import static dev.lampwright.testing.Bounds.assertAbove;
import static dev.lampwright.testing.Bounds.assertBelow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.payload.Leaf;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Unit;
import dev.lampwright.payload.Value;
import dev.lampwright.printer.PrinterState;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each kind of evidence by itself. The class's own rules; common practice, no source. */
class EvidenceTest {
    private static Trail trail(String topic, int seconds, DoubleUnaryOperator value) {
        Trail trail = null;
        for (int i = 0; i < seconds; i++) {
            double number = value.applyAsDouble(i);
            String text = number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
            Leaf leaf = new Leaf(
                    PayloadPath.BARE, List.of(), Optional.empty(), List.of(), new Value.Text(text), number, Unit.OWN);
            trail = trail == null ? new Trail(topic, leaf, false) : trail;
            trail.add(leaf, i);
        }
        return trail;
    }

    /** The closed form of a first-order step response: 63.2 % of the way after one time constant. */
    private static double response(double second, double from, double to, double timeConstant) {
        return to + (from - to) * Math.exp(-second / timeConstant);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "bedTemp_C | bed temp c",
                "BUSE-consigne | buse consigne",
                "düse/soll | duse soll",
                "jet2Now | jet 2 now",
                "Störung | storung",
                "ISINIYOR ısınıyor | isiniyor isiniyor",
                "Łóżko_Đuro_Øst | lozko duro ost",
                "... | ''",
            })
    void namesAreTakenApart(String name, String words) {
        assertEquals(words, String.join(" ", Tokens.of(name)));
    }

    /** A kind of evidence that nobody puts to the values would be dead without a word. */
    @Test
    void everyKindOfEvidenceIsWeighed() {
        Set<Class<?>> weighed = new HashSet<>(Set.of(PlaceEvidence.class, MeaningEvidence.class));
        EvidenceTable.all(new Thermometer(List.of()), List.of()).forEach(evidence -> weighed.add(evidence.getClass()));
        assertEquals(Set.of(Evidence.class.getPermittedSubclasses()), weighed);
    }

    @Test
    void theInnermostNameCounts() {
        Evidence names = new NameEvidence();
        Trail trail = trail("shop/nozzles/bed/now", 1, i -> 0);
        assertAbove(0, names.weigh(trail, Role.BED_ACTUAL).weight());
        assertBelow(0, names.weigh(trail, Role.NOZZLE_ACTUAL).weight());
        assertTrue(names.weigh(trail, Role.BED_SETPOINT).weight()
                < names.weigh(trail, Role.BED_ACTUAL).weight());
    }

    @Test
    void aTemperatureFollowsItsTargetAndNoOther() {
        PairEvidence following = new FollowEvidence();
        Trail bed = trail("a", 600, i -> i < 20 ? 22 : response(i - 20, 22, 60, 70));
        Trail bedTarget = trail("b", 600, i -> i < 20 ? 0 : 60);
        Trail nozzle = trail("c", 600, i -> i < 20 ? 22 : response(i - 20, 22, 215, 35));
        Trail nozzleTarget = trail("d", 600, i -> i < 20 ? 0 : 215);
        assertAbove(3, following.weigh(bed, bedTarget).weight());
        assertAbove(3, following.weigh(nozzle, nozzleTarget).weight());
        assertBelow(0, following.weigh(nozzle, bedTarget).weight());
        assertTrue(following.weigh(bedTarget, nozzleTarget).weight()
                < following.weigh(nozzle, nozzleTarget).weight());
    }

    @Test
    void aTargetStaysAndATemperatureMoves() {
        Evidence steps = new StepEvidence();
        Trail target = trail("a", 600, i -> i < 100 ? 0 : 60);
        Trail actual = trail("b", 600, i -> response(i, 22, 60, 70));
        assertAbove(0, steps.weigh(target, Role.BED_SETPOINT).weight());
        assertBelow(0, steps.weigh(actual, Role.BED_SETPOINT).weight());
        assertAbove(0, steps.weigh(actual, Role.BED_ACTUAL).weight());
        assertBelow(0, steps.weigh(target, Role.BED_ACTUAL).weight());
    }

    @Test
    void progressRisesAndTimeLeftFalls() {
        Evidence trend = new TrendEvidence();
        Trail up = trail("a", 300, i -> Math.floor(i / 3.0));
        Trail down = trail("b", 300, i -> 900 - i);
        Trail noise = trail("c", 300, i -> 50 + 20 * Math.sin(i));
        assertAbove(0, trend.weigh(up, Role.PROGRESS).weight());
        assertAbove(0, trend.weigh(down, Role.LEFT).weight());
        assertBelow(0, trend.weigh(down, Role.PROGRESS).weight());
        assertBelow(0, trend.weigh(noise, Role.PROGRESS).weight());
    }

    @ParameterizedTest
    @CsvSource({"1, SECONDS", "60, MINUTES", "3600, HOURS", "0.001, MILLISECONDS"})
    void timeLeftTellsItsUnitByItsPace(double secondsAUnit, Unit unit) {
        Trail left = trail("a", 3000, i -> (7200 - i) / secondsAUnit);
        assertEquals(unit, UnitGuess.pace(left, Role.LEFT).orElseThrow());
        Trail wholeMinutes = trail("a", 3000, i -> Math.ceil((7200 - i) / 60.0));
        assertEquals(Unit.MINUTES, UnitGuess.pace(wholeMinutes, Role.LEFT).orElseThrow());
    }

    @Test
    void aCountGoesUpToItsTotal() {
        PairEvidence counting = new CountUpEvidence();
        Trail layer = trail("a", 400, i -> Math.floor(i / 5.0));
        Trail layers = trail("b", 400, i -> 79);
        assertAbove(0, counting.weigh(layer, layers).weight());
        assertTrue(counting.weigh(layer, trail("c", 400, i -> 40)).weight() < 0);
    }

    @Test
    void wordsStandForStates() {
        StateWords words = StateWords.of(List.of(
                "READY",
                "heating bed for print",
                "Printing",
                "print_paused",
                "print done",
                "cancelled by user",
                "ALARM 12: door",
                "pozastaveno",
                "xyzzy"));
        assertEquals(
                Map.of(
                        PrinterState.IDLE, List.of("READY"),
                        PrinterState.WARMING, List.of("heating bed for print"),
                        PrinterState.PRINTING, List.of("Printing"),
                        PrinterState.HELD, List.of("print_paused", "pozastaveno"),
                        PrinterState.DONE, List.of("print done"),
                        PrinterState.STOPPED, List.of("cancelled by user"),
                        PrinterState.FAULT, List.of("ALARM*")),
                words.known());
        assertEquals(List.of("xyzzy"), words.unknown());
    }

    @Test
    void aSeriesTakesTheSameRoomHoweverLongItGoesOn() {
        Series series = new Series(256);
        for (int i = 0; i < 100_000; i++) {
            series.add(i, 2 * i);
        }
        assertTrue(series.size() <= 256 && series.size() >= 128, "" + series.size());
        assertEquals(0, series.value(0));
        assertTrue(series.second(series.size() - 1) > 99_000, "the newest are there");
        assertEquals(Double.NaN, series.at(-1));
        for (int i = 1; i < series.size(); i++) {
            assertEquals(series.value(i), series.at(series.second(i)));
            assertEquals(series.value(i - 1), series.at(series.second(i) - 0.5));
        }
    }
}
