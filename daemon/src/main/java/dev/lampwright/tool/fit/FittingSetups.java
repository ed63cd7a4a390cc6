package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.SupplyDraw;
import dev.lampwright.protocol.WhenSilent;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;

/** The set-ups of a controller during the fitting, and the brightness that they allow. */
final class FittingSetups {
    /** What a high-power port of USB 2.0 delivers, in mA (USB 2.0 specification, 7.2.1; from memory). */
    private static final int USB_PORT = 500;

    /** A board with an ATmega328P and its USB chip, in mA (common practice, no source). */
    private static final int BOARD = 50;

    /** The ceiling while the supply is unknown, in mA. */
    static final int SAFE_CEILING = USB_PORT - BOARD;

    /** Three times what a channel of an early WS2812 draws (its datasheet: 20 mA; from memory), in µA. */
    static final int WORST_CHANNEL = 60_000;

    /** One channel of a WS2812 of an early issue (its datasheet; from memory), in µA. */
    static final int USUAL_CHANNEL = 20_000;

    /** The chip in a dark WS2812, rounded up (common practice, no source), in µA. */
    static final int USUAL_IDLE = 1000;

    /** The share of a ceiling that dark pixels may draw, so that something is left to light with. Our own choice. */
    private static final double DARK_SHARE = 0.5;

    /** The share of the remaining ceiling that scenes use, so that the guards never need to act. Our own choice. */
    private static final double USED_SHARE = 0.9;

    private static final int HOLDOVER_MS = 3000;
    private static final int COUNTED_CHANNELS = 3;
    private static final int MICRO = 1000;
    private static final int FULL = 255;
    private static final int MOST_BYTES = 65_535;

    private FittingSetups() {}

    /** The set-up for what is known. Until the pixels are counted, it has as many as can be driven. */
    static Setup of(Findings findings) {
        String order = findings.order().orElse("RGB");
        return new Setup(
                findings.strip().map(Findings.Strip::pixels).orElseGet(() -> mostPixels(findings)),
                order,
                channels(findings, order.length()),
                idle(findings),
                0,
                HOLDOVER_MS,
                WhenSilent.DARK,
                List.of(ceiling(findings)),
                List.of(),
                findings.strip().map(Findings.Strip::runs).orElse(List.of()));
    }

    /** The same, with one more supply, and with dimmers that it feeds. */
    static Setup withDimmers(Setup strip, int ceilingMilliamps, List<Integer> fullMilliamps) {
        return new Setup(
                strip.pixels(),
                strip.order(),
                strip.channelMicroamps(),
                strip.darkMicroamps(),
                strip.stripSupply(),
                strip.holdoverMillis(),
                strip.whenSilent(),
                Stream.of(strip.ceilingsMilliamps().get(0), ceilingMilliamps).toList(),
                fullMilliamps.stream().map(full -> new Setup.Dimmer(1, full, 0)).toList(),
                strip.runs());
    }

    /** The same, calculated with the most that a channel may draw. */
    static Setup wary(Setup setup) {
        return new Setup(
                setup.pixels(),
                setup.order(),
                Collections.nCopies(setup.channels(), WORST_CHANNEL),
                setup.darkMicroamps(),
                setup.stripSupply(),
                setup.holdoverMillis(),
                setup.whenSilent(),
                setup.ceilingsMilliamps(),
                setup.dimmers(),
                setup.runs());
    }

    /** As many pixels as the controller can drive and dark pixels of the ceiling allow. */
    static int mostPixels(Findings findings) {
        int channels = findings.order().map(String::length).orElse(COUNTED_CHANNELS);
        int room = driven(findings.board().orElseThrow().here(), channels);
        return Math.max(1, Math.min(room, (int) (ceiling(findings) * DARK_SHARE * MICRO / USUAL_IDLE)));
    }

    /** As many pixels as the controller can drive. */
    static int driven(Here here, int channels) {
        return Math.min(here.mostPixels() * COUNTED_CHANNELS, MOST_BYTES) / channels;
    }

    /** The ceiling of the strip, in mA. */
    static int ceiling(Findings findings) {
        return findings.supply().map(Findings.Supply::ceilingMilliamps).orElse(SAFE_CEILING);
    }

    /**
     * How brightly some channels of the strip can be lit.
     *
     * @param setup the active set-up
     * @param lights how many channels are lit at the same time
     * @param wanted desired level, 1 to 255
     * @return a level that the ceiling allows, 0 to {@code wanted}
     */
    static int level(Setup setup, int lights, int wanted) {
        SupplyDraw draw = new SupplyDraw(setup);
        long most = 0;
        for (int channel = 0; channel < setup.channels(); channel++) {
            most = Math.max(most, draw.grainsPerStep(channel));
        }
        double room = Math.max(0, draw.limit(0) - draw.idle(0)) * USED_SHARE;
        return (int) Math.min(wanted, Math.floor(room / (most * (double) Math.max(1, lights))));
    }

    private static List<Integer> channels(Findings findings, int count) {
        boolean feared =
                findings.supply().map(supply -> supply.amps().isEmpty()).orElse(true);
        return findings.currents()
                .map(currents -> currents.channels().stream()
                        .map(each -> microamps(each.value()))
                        .toList())
                .orElseGet(() -> Collections.nCopies(count, feared ? WORST_CHANNEL : USUAL_CHANNEL));
    }

    private static int idle(Findings findings) {
        return findings.currents()
                .map(currents -> microamps(currents.idle().value()))
                .orElse(USUAL_IDLE);
    }

    /** As it will be in the configuration. */
    private static int microamps(double milliamps) {
        return (int) Math.round(TypedNumbers.upToTenth(milliamps) * MICRO);
    }

    /** The full level. */
    static int full() {
        return FULL;
    }
}
