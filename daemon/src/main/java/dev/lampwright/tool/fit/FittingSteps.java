package dev.lampwright.tool.fit;

import java.nio.file.Path;
import java.util.List;

/** The steps in their order. */
final class FittingSteps {
    private FittingSteps() {}

    static List<Step> all(Path file, PrinterFinder printers, GuidedFitting.Review review) {
        return List.of(
                new BoardStep(),
                new SupplyStep(),
                new OrderStep(),
                new CountStep(),
                new ZonesStep(),
                new DirectionStep(),
                new BrightnessStep(),
                new CurrentStep(),
                new DimmersStep(),
                new PrinterStep(printers),
                new WriteStep(file, review));
    }
}
