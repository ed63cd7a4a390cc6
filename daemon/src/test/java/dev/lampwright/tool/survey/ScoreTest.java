package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
        scores.forEach(score -> assertEquals(
                List.of(0, 0), List.of(score.falseFaultSeconds(), score.hiddenFaultSeconds()), score.toString()));
        double right = scores.stream().mapToInt(score -> score.right().size()).sum();
        double wrong = scores.stream().mapToInt(score -> score.wrong().size()).sum();
        System.out.printf("%.0f of %.0f, %.1f %%%n", right, right + wrong, 100 * right / (right + wrong));
        return right / (right + wrong);
    }

    @Test
    void nineInTenAreBoundRightAfterAWholeJob() throws ConfigException {
        assertTrue(share("bound right after a whole job", Printers.all(), WHOLE_JOB) >= 0.95);
        assertTrue(share("lot five, whole job", LotFive.all(), WHOLE_JOB) >= 0.95);
        assertTrue(share("lot six, whole job", LotSix.all(), WHOLE_JOB) >= 0.93);
        assertTrue(share("lot seven, whole job", LotSeven.all(), WHOLE_JOB) >= 0.93);
    }

    @Test
    void fourInFiveAreBoundRightAfterTheFirstLayers() throws ConfigException {
        assertTrue(share("bound right after heat-up and the first layers", Printers.all(), TO_THE_FIRST_LAYERS) >= 0.9);
        assertTrue(share("lot five, first layers", LotFive.all(), TO_THE_FIRST_LAYERS) >= 0.9);
        assertTrue(share("lot six, first layers", LotSix.all(), TO_THE_FIRST_LAYERS) >= 0.82);
        assertTrue(share("lot seven, first layers", LotSeven.all(), TO_THE_FIRST_LAYERS) >= 0.82);
    }
}
