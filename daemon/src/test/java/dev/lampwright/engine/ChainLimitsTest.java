package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Setup;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * The ceiling through the whole chain: looks, interrupted fades, an override by an event, dithering, a configuration that is read again. A
 * frame's current is calculated separately in floating point from the set-up, instead of the guard's whole numbers.
 */
class ChainLimitsTest {
    private static final int RATE = 60;

    @Test
    void noFrameIsOverTheCeiling() {
        SplittableRandom chance = new SplittableRandom(9);
        for (int ceiling : new int[] {24, 60, 300, 900}) {
            Config config = config(ceiling);
            Chain chain = Chain.of(config);
            Frame frame = new Frame(config.setup().stripBytes(), 4);
            PrinterStatus status = PrinterStatus.nothingHeard();
            for (int i = 0; i < 60 * RATE; i++) {
                long nanos = i * 1_000_000_000L / RATE;
                if (chance.nextInt(40) == 0) {
                    status = next(status, chance, nanos);
                }
                if (chance.nextInt(900) == 0) {
                    Chain after = Chain.after(chain, config(ceiling));
                    after.takeOver(chain);
                    chain = after;
                }
                chain.make(status, nanos, frame);
                assertTrue(milliamps(config.setup(), frame, 0) <= Math.max(ceiling, 24) + 1e-6, "frame " + i);
                assertTrue(milliamps(config.setup(), frame, 1) <= 250 + 1e-6, "frame " + i);
            }
            assertTrue(chain.guard().heldFrames() > 0 || ceiling < 900, "the override flashes");
        }
    }

    @Test
    void theCeilingIsMadeUseOf() {
        Config config = config(300);
        Chain chain = Chain.of(config);
        Frame frame = new Frame(config.setup().stripBytes(), 4);
        PrinterStatus fault = PrinterStatus.nothingHeard().withState(PrinterState.FAULT, 0);
        for (int i = 0; i < RATE / 4; i++) {
            chain.make(fault, i * 1_000_000_000L / RATE, frame);
        }
        assertEquals(0, frame.duties()[0], "the first to be dimmed");
        assertTrue(milliamps(config.setup(), frame, 0) > 290, "no darker than need be");
    }

    /** WCAG 2.x, general flash: at most three in any one second, even after a file with another rate was read repeatedly. */
    @Test
    void theFlashLimitGoesByTheRateThatRunsWhateverIsReadLater() {
        Config slower = flashing(RATE / 4);
        Chain chain = Chain.of(flashing(RATE));
        for (int reading = 0; reading < 3; reading++) {
            Chain after = Chain.after(chain, slower);
            after.takeOver(chain);
            chain = after;
        }
        assertEquals(RATE, chain.framesPerSecond());
        Frame frame = new Frame(slower.setup().stripBytes(), 0);
        List<Integer> rises = new ArrayList<>();
        boolean bright = false;
        for (int i = 0; i < 5 * RATE; i++) {
            chain.make(PrinterStatus.nothingHeard(), i * 1_000_000_000L / RATE, frame);
            int light = frame.strip()[0] & 0xFF;
            if (!bright && light > 170) {
                rises.add(i);
            }
            bright = bright ? light > 85 : light > 170;
        }
        for (int i = 0; i + 3 < rises.size(); i++) {
            assertTrue(rises.get(i + 3) - rises.get(i) >= RATE, "rises at frames " + rises);
        }
    }

    /** Of seven transitions in a second a controller that may have gone dark and come back takes two; late light counts for longer. */
    @Test
    void whatBecameOfFramesCounts() {
        assertEquals(6, changesInASecond(new Delivery(0, 0, false)), "and one before it is half lit");
        assertEquals(4, changesInASecond(new Delivery(0, 0, true)));
        assertEquals(0, heldOfThreeASecond(new Delivery(0, 0, false)));
        assertTrue(heldOfThreeASecond(new Delivery(0, 400_000_000, false)) > 0, "three a second in 1.4 s are too many");
    }

    private static int changesInASecond(Delivery delivery) {
        Chain chain = Chain.of(rhythm("Iso 0.2s"));
        chain.delivered(delivery);
        Frame frame = new Frame(3, 0);
        int changes = 0;
        boolean before = true;
        for (int i = 0; i < RATE; i++) {
            chain.make(PrinterStatus.nothingHeard(), i * 1_000_000_000L / RATE, frame);
            boolean lit = (frame.strip()[0] & 0xFF) > 127;
            changes += lit == before ? 0 : 1;
            before = lit;
        }
        return changes;
    }

    private static long heldOfThreeASecond(Delivery delivery) {
        Chain chain = Chain.of(rhythm("Iso 0.34s"));
        Frame frame = new Frame(3, 0);
        for (int i = 0; i < 2 * RATE; i++) {
            if (i == 1) {
                chain.delivered(delivery);
            }
            chain.make(PrinterStatus.nothingHeard(), i * 1_000_000_000L / RATE, frame);
        }
        return chain.guard().heldFrames();
    }

    private static Config rhythm(String rhythm) {
        return Configs.of(
                1,
                "GRB",
                "looks.blink.layers = [{ colour = \"white\", rhythm = \"" + rhythm
                        + "\" }]\n[[cues]]\nlook = \"blink\"\nfade_s = 0\n");
    }

    private static Config flashing(int rate) {
        return Configs.lines(String.format("""
            frames_per_s = %d
            strip.pixels = 24
            supply.ceiling_mA = 3000
            looks.alert.layers = [{ colour = "black" }, { colour = "white", rhythm = "Iso 0.2s" }]
            cues = [{ look = "alert" }]
            """, rate));
    }

    private static PrinterStatus next(PrinterStatus status, SplittableRandom chance, long nanos) {
        List<PrinterState> states = List.of(PrinterState.values());
        return switch (chance.nextInt(3)) {
            case 0 -> status.withState(states.get(chance.nextInt(states.size())), nanos);
            case 1 -> status.withEvent("camera", nanos + 2_000_000_000L, nanos);
            default -> status.withReading(Quantity.JOB_PROGRESS, chance.nextDouble(), nanos);
        };
    }

    private static Config config(int ceiling) {
        return Configs.lines(String.format("""
            frames_per_s = 60
            strip = { pixels = 24, order = "GRBW", channel_mA = [12, 13, 14, 19], idle_mA = 1, dithering = true }
            supply.ceiling_mA = %d
            zones.glow = "8-15"
            dimmers.work = { channel = 0, volts = 5, full_mA = 300 }
            dimmers.cove = { channels = [1, 2, 3], volts = 12, full_mA = 200, ceiling_mA = 250 }
            guard.dim_order = ["work", "glow"]
            looks.alert.layers = [{ colour = "white", rhythm = "Iso 0.13s" }, { zone = "cove", colour = "white" }]
            looks.alert.dimmers = { work = 1 }
            printer.events.camera = { topic = "shop/alder/camera", begin = ["SNAP"], lasts_s = 2 }
            cues = [{ event = "camera", look = "alert", fade_s = 0.2 }]
            """, ceiling));
    }

    private static double milliamps(Setup setup, Frame frame, int supply) {
        double sum = supply == 0 ? setup.pixels() * setup.darkMicroamps() / 1000.0 : 0;
        for (int i = 0; supply == 0 && i < frame.strip().length; i++) {
            sum += (frame.strip()[i] & 0xFF) / 255.0 * setup.channelMicroamps().get(i % setup.channels()) / 1000;
        }
        for (int i = 0; i < setup.dimmers().size(); i++) {
            Setup.Dimmer dimmer = setup.dimmers().get(i);
            sum += dimmer.supply() == supply ? frame.duties()[i] / 65_535.0 * dimmer.fullMilliamps() : 0;
        }
        return sum;
    }
}
