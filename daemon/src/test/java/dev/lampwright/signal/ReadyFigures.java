package dev.lampwright.signal;

import java.util.Locale;

/**
 * Prints the errors of the time to ready during invented heat-ups, for each {@link HeaterLot}; not a test. Run it after
 * {@code mvn package}, from the folder {@code daemon}; takes seconds:
 *
 * <pre>java -cp target/test-classes:target/lampwright.jar dev.lampwright.signal.ReadyFigures [COUNT [SEED]]</pre>
 *
 * <p>Each of COUNT heaters (200) heats up twice. At a quarter, a half and three quarters of the way it prints the mean absolute error as
 * share of the time left, the error that nine in ten stay below, the mean error with its sign, how often the truth is within two standard
 * errors, and for how many heaters the time was unknown.
 */
final class ReadyFigures {
    private static final int COUNT = 200;

    private ReadyFigures() {}

    /**
     * Calculates and prints.
     *
     * @param args how many heaters, and the seed
     */
    public static void main(String[] args) {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : COUNT;
        long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
        for (HeaterLot lot : HeaterLot.values()) {
            ReadyErrors.OfLot errors = ReadyErrors.of(lot.heatUps(count, seed));
            System.out.println(lot + ", " + count + " heaters, seed " + seed);
            print("first", errors.first());
            print("second", errors.second());
        }
    }

    private static void print(String name, ReadyErrors errors) {
        for (double share : ReadyErrors.MARKS) {
            System.out.printf(Locale.ROOT, "  %-6s at %2.0f %%: %s%n", name, 100 * share, errors.at(share));
        }
        System.out.printf(Locale.ROOT, "  %-6s %.0f %% of the time within%n", name, 100 * errors.within());
    }
}
