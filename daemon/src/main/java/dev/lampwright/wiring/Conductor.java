package dev.lampwright.wiring;

/** The material of a wire's conductor. */
public enum Conductor {
    /** Plain copper. */
    COPPER(1, ""),
    /** Tinned copper: IEC 60228, class 5, has 40.1 Ω/km for 0.5 mm² instead of 39.0 (from memory). */
    TINNED(40.1 / 39.0, "tinned"),
    /** Aluminium with a tenth of copper around it: 0.02743 Ω·mm²/m, ASTM B566, class 10A (from memory). */
    CCA(0.02743 / 0.017241, "copper-clad aluminium");

    private final double resistance;
    private final String words;

    Conductor(double resistance, String words) {
        this.resistance = resistance;
        this.words = words;
    }

    /** Its resistance relative to plain copper of the same size. */
    double resistance() {
        return resistance;
    }

    /** What to add to a wire's size; empty for plain copper. */
    String words() {
        return words;
    }

    /**
     * What it carries, as a share of what plain copper does: heat is current squared times resistance. (For aluminium, the guide APS 42L of
     * a manufacturer of electronic loads gives 80 %, table 7-1.)
     */
    double carries() {
        return 1 / Math.sqrt(resistance);
    }
}
