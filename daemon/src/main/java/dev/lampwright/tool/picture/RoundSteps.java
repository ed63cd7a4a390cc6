package dev.lampwright.tool.picture;

/** Round distances for the marks of a scale. */
final class RoundSteps {
    private static final int[] COUNTS = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000};
    private static final int[] SECONDS = {1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1800, 3600, 7200, 21_600, 86_400};

    private RoundSteps() {}

    /** From mark to mark of a scale that counts. */
    static int counts(double pxEach, double leastPx) {
        return step(COUNTS, pxEach, leastPx);
    }

    /** From mark to mark of a scale of time, in s. */
    static int seconds(double pxEach, double leastPx) {
        return step(SECONDS, pxEach, leastPx);
    }

    private static int step(int[] steps, double pxEach, double leastPx) {
        for (int step : steps) {
            if (step * pxEach >= leastPx) {
                return step;
            }
        }
        return steps[steps.length - 1];
    }
}
