package dev.lampwright.tool.plan;

import dev.lampwright.protocol.Setup;
import dev.lampwright.wiring.Wiring;
import java.util.Arrays;
import java.util.stream.IntStream;

/** What the fitted lights draw, in A. */
final class Loads {
    /** Half a percent more is not worth mentioning. */
    static final double WORTH_SAYING = 1.005;

    private static final double MILLI = 1e-3;
    private static final double MICRO = 1e-6;
    private static final int NONE = -1;

    private final Setup setup;
    private final Wiring wiring;

    Loads(PlannedLights rig) {
        setup = rig.setup();
        wiring = rig.wiring();
    }

    /**
     * The current behind a power.
     *
     * @param watts power, in W
     * @param volts voltage, in V, above 0
     * @return A
     */
    static double amps(double watts, double volts) {
        return watts / volts;
    }

    /** One dark pixel. */
    double darkPixel() {
        return setup.darkMicroamps() * MICRO;
    }

    /** The whole strip, dark. */
    double dark() {
        return setup.pixels() * darkPixel();
    }

    /** One pixel with all its channels at full. */
    double fullPixel() {
        return darkPixel()
                + IntStream.range(0, setup.channels())
                        .mapToDouble(this::channel)
                        .sum();
    }

    /**
     * Each pixel at some duties.
     *
     * @param duties duty of each channel of each pixel, 0 to 1
     * @return A for each pixel
     */
    double[] pixels(double[] duties) {
        double[] amps = new double[setup.pixels()];
        Arrays.fill(amps, darkPixel());
        for (int i = 0; i < duties.length; i++) {
            amps[i / setup.channels()] += duties[i] * channel(i % setup.channels());
        }
        return amps;
    }

    /**
     * One output of the controller at full: what the file says, or more if the light's power implies that.
     *
     * @param dimmer index of the output
     */
    double dimmer(int dimmer) {
        double told = setup.dimmers().get(dimmer).fullMilliamps() * MILLI;
        return wiring.lights().stream()
                .filter(light -> light.outputs().contains(dimmer))
                .mapToDouble(light -> byPower(light) / light.outputs().size())
                .reduce(told, Math::max);
    }

    /** One light at full. */
    double light(Wiring.Light light) {
        return light.outputs().stream().mapToDouble(this::dimmer).sum();
    }

    /** The current that a light's power makes at its supply's voltage; 0 if its power is not configured. */
    double byPower(Wiring.Light light) {
        double volts = wiring.supplies().get(supplyOf(light)).volts();
        return amps(light.watts().orElse(0), volts);
    }

    /** Index of the supply that feeds a light. */
    int supplyOf(Wiring.Light light) {
        return setup.dimmers().get(light.outputs().get(0)).supply();
    }

    /** All lights of a supply at full white, as if there were no ceiling. */
    double full(int supply) {
        double strip = supply == setup.stripSupply() ? setup.pixels() * fullPixel() : 0;
        return strip + dimmersOf(supply).mapToDouble(this::dimmer).sum();
    }

    /**
     * The mean current of everything on a supply at its ceiling, including the board and the computer.
     *
     * @param supply its index
     * @return A
     */
    double drawn(int supply) {
        return held(supply) + others(supply);
    }

    /** The most that all lights of a supply draw together under the ceiling. */
    double held(int supply) {
        return Math.min(full(supply), ceiling(supply));
    }

    /**
     * The most that the lights of a supply may draw, as a mean. If a light draws more than the controller was configured for, the ceiling
     * holds that much less well.
     */
    double ceiling(int supply) {
        double excess = dimmersOf(supply)
                .filter(i -> setup.dimmers().get(i).fullMilliamps() > 0)
                .mapToDouble(i -> dimmer(i) / (setup.dimmers().get(i).fullMilliamps() * MILLI))
                .reduce(1, Math::max);
        return setup.ceilingsMilliamps().get(supply) * MILLI * excess;
    }

    /**
     * The highest momentary current while the ceiling holds the mean: the pulses of the plain lights, which the controller starts together,
     * plus what the ceiling leaves to the strip.
     */
    double peak(int supply) {
        double lights = dimmersOf(supply).mapToDouble(this::dimmer).sum();
        double strip = supply == setup.stripSupply() ? Math.min(setup.pixels() * fullPixel(), ceiling(supply)) : 0;
        return Math.max(lights + strip, held(supply));
    }

    /** What else a supply feeds: the computer, or the board that feeds the strip. */
    double others(int supply) {
        boolean feedsBoard = wiring.strip().fromBoard() && supply == setup.stripSupply();
        boolean feedsComputer = wiring.computer().supply().orElse(NONE) == supply;
        return (feedsBoard ? wiring.board().ownAmps() : 0)
                + (feedsComputer ? wiring.computer().amps() : 0);
    }

    /**
     * The largest RMS current through the parts that carry everything on a supply: a mean that the ceiling holds, made of pulses that begin
     * together. Pulses of height P and mean m add m·(P − m) to the square of the mean. A strip whose pixels pulse independently counts by
     * its mean.
     *
     * @param supply index of the supply
     * @return A (RMS)
     */
    double rms(int supply) {
        double mean = held(supply);
        double lights = dimmersOf(supply).mapToDouble(this::dimmer).sum();
        boolean feedsStrip = supply == setup.stripSupply();
        double strip = feedsStrip ? setup.pixels() * fullPixel() : 0;
        double pulses = lights;
        double pulsed;
        if (feedsStrip && wiring.strip().together()) {
            pulses += strip - dark();
            pulsed = Math.max(0, mean - dark());
        } else {
            pulsed = Math.max(Math.max(0, mean - strip), Math.min(Math.min(lights, mean), lights / 2));
        }
        double all = mean + others(supply);
        return Math.sqrt(all * all + Math.max(0, pulsed * (pulses - pulsed)));
    }

    /** All lights of a supply at some moment. */
    double at(int supply, double[] strip, double[] dimmers) {
        double amps =
                supply == setup.stripSupply() ? Arrays.stream(pixels(strip)).sum() : 0;
        return amps + dimmersOf(supply).mapToDouble(i -> dimmers[i] * dimmer(i)).sum();
    }

    private IntStream dimmersOf(int supply) {
        return IntStream.range(0, setup.dimmers().size())
                .filter(i -> setup.dimmers().get(i).supply() == supply);
    }

    private double channel(int channel) {
        return setup.channelMicroamps().get(channel) * MICRO;
    }
}
