package dev.lampwright.signal;

import dev.lampwright.signal.HeatUpRecord.Telling;
import dev.lampwright.signal.HeaterLot.Scale;
import java.util.Arrays;
import java.util.SplittableRandom;

/** A heater that is a row of bodies, of which the first is heated and one is felt; all of them but the first lose heat. */
record RowOfBodies(Conduction conduction, Power power, Controlled controlled, double deadS, double sensorShare)
        implements HeaterLot.Heater {
    /**
     * Bodies in a row, of which the first is heated.
     *
     * @param bodies how many
     * @param share of the time of a heat-up that heat takes from one to the next
     * @param first share of the heat capacity that the first has
     * @param feltAt which is felt
     * @param radiated share of the loss that goes by radiation, at the target
     */
    record Conduction(int bodies, double share, double first, int feltAt, double radiated) {
        double capacity(int body) {
            return body == 0 ? first : (1 - first) / (bodies - 1);
        }
    }

    /**
     * The heating.
     *
     * @param reach full power would hold this many times the way from the room to the target
     * @param falls share by which it falls on the way to the target
     * @param sag share that it loses on the way
     * @param sagsAt at which share of the way
     */
    record Power(double reach, double falls, double sag, double sagsAt) {}

    /**
     * The throttling.
     *
     * @param bandK full power up to this far below the target; 0 for two points
     * @param slopeShare how far the slope widens the band, as share of the time of a heat-up
     * @param integralShare time of the integral term, as share of the time of a heat-up; 0 for none
     * @param hysteresisK of two points
     * @param isFed whether what holds the target is added, so that a band alone is enough
     */
    record Controlled(double bandK, double slopeShare, double integralShare, double hysteresisK, boolean isFed) {
        static Controlled twoPoints(double hysteresisK) {
            return new Controlled(0, 0, 0, hysteresisK, false);
        }
    }

    @Override
    public HeatUpRecord heatUp(Scale scale, double startC, Telling telling, SplittableRandom chance) {
        Run run = new Run(this, scale, startC);
        return HeatUpRecord.told(scale.targetC(), startC, telling, chance, run.stepS, run::step, HeaterLot.LONGEST_S);
    }

    /** A running heat-up; temperatures in K above the room, capacities as shares of the whole. */
    private static final class Run {
        private final double stepS;
        private final RowOfBodies heater;
        private final Scale scale;
        private final double[] bodies;
        private final double full;
        private double felt;
        private double feltBefore;
        private double integral;
        private double seconds;
        private boolean isOn = true;

        Run(RowOfBodies heater, Scale scale, double startC) {
            this.heater = heater;
            this.scale = scale;
            bodies = new double[heater.conduction.bodies];
            Arrays.fill(bodies, startC - scale.roomC());
            felt = bodies[0];
            feltBefore = felt;
            full = scale.slope();
            double fastest = heater.conduction.share * scale.seconds() / bodies.length / bodies.length;
            stepS = Math.min(0.1, Math.max(0.005, 0.2 * fastest));
        }

        double step() {
            Conduction conduction = heater.conduction;
            double through = (bodies.length - 1) / (conduction.share * scale.seconds());
            double last = 0;
            double in = seconds < heater.deadS ? 0 : heating() * duty();
            for (int i = 0; i < bodies.length; i++) {
                double out = i == bodies.length - 1 ? 0 : through / bodies.length * 2 * (bodies[i] - bodies[i + 1]);
                double lost = i == 0 ? 0 : loss(bodies[i]) / (bodies.length - 1);
                double gained = (i == 0 ? in : last) - out - lost;
                last = out;
                bodies[i] += gained / conduction.capacity(i) * stepS;
            }
            double sensorS = heater.sensorShare * scale.seconds();
            feltBefore = felt;
            felt += (bodies[conduction.feltAt] - felt) * -Math.expm1(-stepS / Math.max(1e-3, sensorS));
            seconds += stepS;
            return scale.roomC() + felt;
        }

        private double heating() {
            boolean sags = felt > heater.power.sagsAt * scale.wayK();
            return full * (1 - heater.power.falls * bodies[0] / scale.wayK()) * (sags ? 1 - heater.power.sag : 1);
        }

        /** What the whole loses, as K/s: at reach times the way it is full power, through conduction and radiation. */
        private double loss(double above) {
            double kelvin = scale.roomC() + 273;
            double target = scale.wayK();
            double atTarget = full / heater.power.reach;
            double radiated = (Math.pow(kelvin + above, 4) - Math.pow(kelvin, 4))
                    / (Math.pow(kelvin + target, 4) - Math.pow(kelvin, 4));
            return atTarget
                    * ((1 - heater.conduction.radiated) * above / target + heater.conduction.radiated * radiated);
        }

        private double duty() {
            Controlled controlled = heater.controlled;
            double below = scale.wayK() - felt;
            if (controlled.bandK == 0) {
                isOn = isOn ? below > -controlled.hysteresisK / 2 : below > controlled.hysteresisK / 2;
                return isOn ? 1 : 0;
            }
            double slope = (felt - feltBefore) / stepS;
            double fed = controlled.isFed ? 1 / heater.power.reach : 0;
            double wanted =
                    (below - controlled.slopeShare * scale.seconds() * slope) / controlled.bandK + integral + fed;
            if (controlled.integralShare > 0 && wanted > 0 && wanted < 1) {
                integral += below / controlled.bandK / (controlled.integralShare * scale.seconds()) * stepS;
            }
            return Math.max(0, Math.min(1, wanted));
        }
    }
}
