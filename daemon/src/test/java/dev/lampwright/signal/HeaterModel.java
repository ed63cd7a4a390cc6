package dev.lampwright.signal;

/**
 * An invented heater with a sensor, in steps of a tenth of a second: a body is heated, a second one takes its heat from the first and loses
 * it to the room, and the sensor feels the second. A controller applies full power until close to the target.
 */
final class HeaterModel {
    static final double STEP_S = 0.1;

    private final Build build;
    private final double room;
    private double heated;
    private double felt;
    private double slope;
    private double integral;
    private double seconds;

    /**
     * The properties of a heater.
     *
     * @param watts full power
     * @param heatedJPerK heat capacity of what is heated
     * @param feltJPerK heat capacity of what is felt
     * @param throughWPerK how well heat goes from one to the other
     * @param lostWPerK how well heat goes from what is felt to the room
     * @param deadS how long it takes until power arrives
     * @param controller what throttles it
     */
    record Build(
            double watts,
            double heatedJPerK,
            double feltJPerK,
            double throughWPerK,
            double lostWPerK,
            double deadS,
            Controller controller) {
        static final Build BED = new Build(220, 600, 450, 25, 1.9, 1, new Controller(30, 0.5, 100));
        static final Build SLOW_BED = new Build(160, 800, 900, 18, 1.6, 2, Controller.ON_OFF);
        static final Build NOZZLE = new Build(40, 10, 3, 0.9, 0.085, 0.5, new Controller(3.5, 0.25, 10));
        static final Build SLOW_NOZZLE = new Build(30, 14, 4, 0.8, 0.08, 1, new Controller(2.5, 0.15, 10));
    }

    /**
     * A controller with three terms.
     *
     * @param wattsPerK its proportional term
     * @param wattsPerKs its integral term, which is active while power is neither full nor zero
     * @param wattSecondsPerK its differential term
     */
    record Controller(double wattsPerK, double wattsPerKs, double wattSecondsPerK) {
        static final Controller ON_OFF = new Controller(1e6, 0, 0);
    }

    HeaterModel(Build build, double room, double start) {
        this.build = build;
        this.room = room;
        heated = start;
        felt = start;
    }

    /** Advances by a step and returns the temperature at the sensor. */
    double step(double target) {
        double watts = seconds < build.deadS ? 0 : power(target);
        double through = build.throughWPerK * (heated - felt);
        heated += (watts - through) / build.heatedJPerK * STEP_S;
        slope = (through - build.lostWPerK * (felt - room)) / build.feltJPerK;
        felt += slope * STEP_S;
        seconds += STEP_S;
        return felt;
    }

    private double power(double target) {
        Controller terms = build.controller;
        double wanted = terms.wattsPerK * (target - felt) + integral - terms.wattSecondsPerK * slope;
        if (wanted > 0 && wanted < build.watts) {
            integral += terms.wattsPerKs * (target - felt) * STEP_S;
        }
        return Math.max(0, Math.min(build.watts, wanted));
    }
}
