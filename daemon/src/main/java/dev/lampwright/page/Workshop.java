package dev.lampwright.page;

/**
 * What people can do on a page beyond watching and asking.
 *
 * @param benches where looks are made
 * @param fitters where lights are fitted
 */
public record Workshop(Bench.Maker benches, Fitter.Maker fitters) {
    /** Nothing. */
    public static final Workshop NONE = new Workshop(Bench.Maker.NONE, Fitter.Maker.NONE);
}
