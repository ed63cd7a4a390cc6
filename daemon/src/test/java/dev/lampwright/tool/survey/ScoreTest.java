package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.ConfigException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ScoreTest {
    private static final int WHOLE_JOB = Integer.MAX_VALUE;
    private static final int TO_THE_FIRST_LAYERS = 400;

    private static double share(String what, List<Printer> printers, int seconds) throws ConfigException {
        List<Score> scores = new ArrayList<>();
        for (Printer printer : printers) {
            scores.add(Score.of(printer, seconds));
        }
        System.out.println(what + ":");
        scores.forEach(System.out::println);
        double right = scores.stream().mapToInt(score -> score.right().size()).sum();
        double wrong = scores.stream().mapToInt(score -> score.wrong().size()).sum();
        System.out.printf("%.1f %%%n", 100 * right / (right + wrong));
        return right / (right + wrong);
    }

    @Test
    void nineInTenAreBoundRightAfterAWholeJob() throws ConfigException {
        assertTrue(share("bound right after a whole job", Printers.all(), WHOLE_JOB) >= 0.9);
    }

    @Test
    void threeInFourAreBoundRightAfterTheFirstLayers() throws ConfigException {
        assertTrue(
                share("bound right after heat-up and the first layers", Printers.all(), TO_THE_FIRST_LAYERS) >= 0.75);
    }
}
