package dev.lampwright.tool.plan;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Measures one look: the current from each supply and through each connector under the ceilings, and its moment of greatest load. */
final class LookMeter {
    private final String name;
    private final PlannedLights rig;
    private final Loads loads;
    private final List<CurrentPath> connectors;
    private final Gauges supplyGauges;
    private final Gauges connectorGauges;
    private final boolean[] dimmed;
    private double[] heaviest = {};
    private double heaviestAmps = -1;

    /** Mean and peak at several places. */
    private static final class Gauges {
        private final double[] sum;
        private final double[] peak;
        private int moments;

        Gauges(int places) {
            sum = new double[places];
            peak = new double[places];
        }

        void take(double[] amps) {
            moments++;
            for (int i = 0; i < amps.length; i++) {
                sum[i] += amps[i];
                peak[i] = Math.max(peak[i], amps[i]);
            }
        }

        Demand.Draw draw(int place, double others, boolean dimmed) {
            return new Demand.Draw(sum[place] / moments + others, peak[place] + others, dimmed);
        }
    }

    private LookMeter(String name, PlannedLights rig, List<CurrentPath> connectors) {
        this.name = name;
        this.rig = rig;
        this.connectors = connectors;
        loads = new Loads(rig);
        int supplies = rig.wiring().supplies().size();
        supplyGauges = new Gauges(supplies);
        connectorGauges = new Gauges(connectors.size());
        dimmed = new boolean[supplies];
    }

    /**
     * Measures a look.
     *
     * @param look the look
     * @param rig what is fitted
     * @param connectors its connectors
     * @return the readings
     */
    static LookMeter of(LookDemand look, PlannedLights rig, List<CurrentPath> connectors) {
        LookMeter meter = new LookMeter(look.name(), rig, connectors);
        look.moments(meter::take);
        return meter;
    }

    /** The look's name. */
    String name() {
        return name;
    }

    /** What it draws from each supply and through each connector. */
    Demand demand() {
        return new Demand(
                name,
                IntStream.range(0, dimmed.length)
                        .mapToObj(i -> supplyGauges.draw(i, loads.others(i), dimmed[i]))
                        .toList(),
                IntStream.range(0, connectors.size())
                        .mapToObj(i -> connectorGauges.draw(i, 0, false))
                        .toList());
    }

    /** What each pixel draws at the moment of greatest load, in A. */
    double[] heaviest() {
        return heaviest.clone();
    }

    private void take(double[] strip, double[] dimmers) {
        double[] supplies = new double[dimmed.length];
        double[] shares = new double[dimmed.length];
        for (int i = 0; i < supplies.length; i++) {
            double asked = loads.at(i, strip, dimmers);
            supplies[i] = Math.min(asked, loads.ceiling(i));
            shares[i] = asked > 0 ? supplies[i] / asked : 1;
            dimmed[i] |= supplies[i] < asked;
        }
        supplyGauges.take(supplies);
        double[] pixels = scaled(loads.pixels(strip), shares[rig.setup().stripSupply()]);
        double[] lights = lights(dimmers, shares);
        connectorGauges.take(connectors.stream()
                .mapToDouble(place -> place.amps(pixels, lights))
                .toArray());
        keepHeaviest(pixels);
    }

    private double[] lights(double[] dimmers, double[] shares) {
        double[] amps = new double[dimmers.length];
        Arrays.setAll(
                amps,
                i -> dimmers[i]
                        * loads.dimmer(i)
                        * shares[rig.setup().dimmers().get(i).supply()]);
        return amps;
    }

    private void keepHeaviest(double[] pixels) {
        double amps = Arrays.stream(pixels).sum();
        if (amps > heaviestAmps) {
            heaviestAmps = amps;
            heaviest = pixels;
        }
    }

    private static double[] scaled(double[] amps, double share) {
        return Arrays.stream(amps).map(each -> share * each).toArray();
    }
}
