package dev.lampwright.signal;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;

/**
 * A plate in layers, heated from below: heat spreads by diffusion and is lost at the top by convection and radiation. Its controller is
 * tuned by a published rule to how sluggish the plate is.
 *
 * @param diffusion time that heat takes to spread through it, as share of the time of a heat-up
 * @param feltAt where the sensor is, 0 at the bottom to 1 at the top
 * @param sensorS how slowly the sensor follows, in s
 * @param deadS how long it takes until power arrives
 * @param hottestK how far above the room full power would get eventually
 * @param radiated share of the loss by radiation, there
 * @param periodS power comes in pulses of this period; 0 if it does not
 * @param controller what throttles it
 * @param slack how much slower than the plate's own sluggishness the controller is tuned
 * @param hysteresisK of two points
 */
record HeatedPlate(
        double diffusion,
        double feltAt,
        double sensorS,
        double deadS,
        double hottestK,
        double radiated,
        double periodS,
        Controller controller,
        double slack,
        double hysteresisK)
        implements HeaterLot.Heater {
    private static final int LAYERS = 8;
    /**
     * Natural convection at a plate removes heat proportionally to the difference to the power of 5/4 (laminar; common engineering
     * practice, from memory).
     */
    private static final double CONVECTION = 1.25;

    /** What throttles a plate. */
    enum Controller {
        /** Full power or none. */
        TWO_POINTS,
        /** A band, with known holding power. */
        BAND,
        /** A band and an integral term that is kept from winding up. */
        INTEGRAL
    }

    @Override
    public HeatUpRecord heatUp(
            HeaterLot.Scale scale, double startC, HeatUpRecord.Telling telling, SplittableRandom chance) {
        Run run = new Run(this, scale, startC);
        return HeatUpRecord.told(scale.targetC(), startC, telling, chance, run.stepS, run, HeaterLot.LONGEST_S);
    }

    /** A running heat-up; temperatures in K above the room, power in K/s that it would heat the whole plate by. */
    private static final class Run implements DoubleSupplier {
        private final HeatedPlate plate;
        private final HeaterLot.Scale scale;
        private final double[] layers = new double[LAYERS];
        private final double stepS;
        private final double exchange;
        private final double bandK;
        private final double integralS;
        private double felt;
        private double integral;
        private double seconds;
        private double duty;
        private boolean isOn = true;

        /**
         * Begins one. The controller is tuned by Skogestad's rule, "Simple analytic rules for model reduction and PID controller tuning", Journal
         * of Process Control 13 (2003): gain 1 ÷ (k'·(τc + θ)) and integral time 4·(τc + θ), where k' is the slope at full power and θ what
         * the response lags behind, here with τc = slack·θ.
         */
        Run(HeatedPlate plate, HeaterLot.Scale scale, double startC) {
            this.plate = plate;
            this.scale = scale;
            double spreadS = plate.diffusion * scale.seconds();
            exchange = LAYERS * LAYERS / spreadS;
            stepS = Math.min(0.1, 0.3 / exchange);
            double behindS = plate.deadS + plate.sensorS + spreadS * plate.feltAt * plate.feltAt / 2;
            bandK = Math.max(0.5, scale.slope() * (1 + plate.slack) * behindS);
            integralS = 4 * (1 + plate.slack) * behindS;
            felt = startC - scale.roomC();
            Arrays.fill(layers, felt);
        }

        @Override
        public double getAsDouble() {
            double in = seconds < plate.deadS ? 0 : scale.slope() * pulse();
            double below = 0;
            for (int i = 0; i < LAYERS; i++) {
                double out = i == LAYERS - 1 ? loss(layers[i]) * LAYERS : exchange * (layers[i] - layers[i + 1]);
                double before = layers[i];
                layers[i] += (below - out + (i == 0 ? in * LAYERS : 0)) * stepS;
                below = i == LAYERS - 1 ? 0 : exchange * (before - layers[i + 1]);
            }
            double at = layers[(int) Math.round(plate.feltAt * (LAYERS - 1))];
            felt += (at - felt) * -Math.expm1(-stepS / Math.max(1e-3, plate.sensorS));
            seconds += stepS;
            return scale.roomC() + felt;
        }

        /** Full power is lost where the plate is as hot as it gets. */
        private double loss(double above) {
            if (above <= 0) {
                return 0;
            }
            double room = scale.roomC() + 273;
            double radiation = (Math.pow(room + above, 4) - Math.pow(room, 4))
                    / (Math.pow(room + plate.hottestK, 4) - Math.pow(room, 4));
            double convection = Math.pow(above / plate.hottestK, CONVECTION);
            return scale.slope() * ((1 - plate.radiated) * convection + plate.radiated * radiation);
        }

        /** Power now: within a period it is on for the requested share. */
        private double pulse() {
            if (plate.periodS == 0) {
                duty = wanted();
                return duty;
            }
            double within = seconds % plate.periodS;
            if (within < stepS) {
                duty = wanted();
            }
            return within < duty * plate.periodS ? 1 : 0;
        }

        private double wanted() {
            double missing = scale.wayK() - felt;
            if (plate.controller == Controller.TWO_POINTS) {
                isOn = missing > (isOn ? -plate.hysteresisK / 2 : plate.hysteresisK / 2);
                return isOn ? 1 : 0;
            }
            double held = plate.controller == Controller.BAND ? loss(scale.wayK()) / scale.slope() : integral;
            double power = Math.max(0, Math.min(1, missing / bandK + held));
            if (power > 0 && power < 1) {
                integral += missing / bandK / integralS * Math.max(stepS, plate.periodS);
            }
            return power;
        }
    }
}
