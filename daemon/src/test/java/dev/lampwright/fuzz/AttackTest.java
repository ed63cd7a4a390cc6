package dev.lampwright.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Attacks are repeatable by their seed and number, and are reduced by leaving out what does not matter. */
class AttackTest {
    static List<Target> targets() {
        return Targets.ALL;
    }

    @ParameterizedTest
    @MethodSource("targets")
    void aSeedAndANumberMakeTheSameAttackAgain(Target target) {
        for (int number = 0; number < 20; number++) {
            List<String> lines = lines(Attack.of(target, 7, number));
            assertEquals(lines, lines(Attack.of(target, 7, number)));
            assertNotEquals(lines, lines(Attack.of(target, 8, number)));
        }
    }

    @ParameterizedTest
    @MethodSource("targets")
    void aStepIsDescribedOnOneLine(Target target) {
        for (int number = 0; number < 20; number++) {
            for (Step step : Attack.of(target, 9, number).steps()) {
                assertEquals(1, step.toString().lines().count(), step::toString);
                assertTrue(step.toString().length() < 10_000);
            }
        }
    }

    private static List<String> lines(Attack attack) {
        return Stream.concat(
                        Stream.of(attack.after().name()),
                        attack.steps().stream().map(Step::line))
                .toList();
    }

    /** Two of a hundred steps matter together, and of one of them only a third. */
    @Test
    void theSmallestAttackHasOnlyWhatMatters() {
        List<Step> steps = new ArrayList<>(
                IntStream.range(0, 100).mapToObj(i -> step("step " + i)).toList());
        steps.set(40, step("abc"));
        Shrinking shrinking = new Shrinking(tried -> has(tried, "step 70") && has(tried, "b"), 1000);
        assertEquals(
                List.of("b", "step 70"),
                shrinking.of(steps).stream().map(Step::line).toList());
    }

    @Test
    void anAttackIsTriedNoMoreOftenThanAllowed() {
        int[] tries = {0};
        List<Step> steps =
                IntStream.range(0, 100).mapToObj(i -> step("step " + i)).toList();
        new Shrinking(
                        tried -> {
                            tries[0]++;
                            return has(tried, "step 70");
                        },
                        5)
                .of(steps);
        assertEquals(5, tries[0]);
    }

    private static boolean has(List<Step> steps, String text) {
        return steps.stream().anyMatch(step -> step.line().contains(text));
    }

    private static Step step(String line) {
        return new Step(
                line,
                rig -> {},
                () -> line.length() > 3 || line.length() < 2
                        ? List.of()
                        : List.of(step(line.substring(1)), step(line.substring(0, line.length() - 1))));
    }
}
