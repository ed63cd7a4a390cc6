package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import dev.lampwright.config.Config;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Wishes;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Chains of one configuration are independent. */
class SharedConfigTest {
    private static final List<PrinterState> STATES = List.of(PrinterState.values());
    private static final List<AlarmState> ALARMS = List.of(AlarmState.values());
    private static final int RATE = 20;
    private static final long SECOND = 1_000_000_000L;
    private static final String TEXT = """
            frames_per_s = 20
            supply.ceiling_mA = 900
            [strip]
            pixels = 30
            order = "GRBW"
            dithering = true
            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }
            [printer.events.camera]
            topic = "shop/alder/camera"
            begin = ["SNAP"]
            [alarm]
            sequence = "R"
            [looks.restless]
            dimmers = { work = { by = "bed.heat" } }
            layers = [
              { paint = "ember", seed = 5 },
              { paint = "ramp", colours = ["navy", "lime", "navy"], cycle_s = 3, opacity = 0.3 },
              { colour = "white", extent = "grains", density = 0.3, glint_s = 1 },
              { colour = "gold", extent = "band", width_px = 1, tail_px = 3, speed_px_per_s = 4 },
              { paint = "scale", colours = ["blue", "red"], by = "nozzle.heat", extent = "bar", rhythm = "Iso 2s" },
            ]
            [looks.hot]
            layers = [{ colour = "orangered", opacity = 0.37 }]
            [[cues]]
            signal = "nozzle.actual_C"
            above = 180
            margin = 30
            state = ["done", "stopped", "idle"]
            look = "hot"
            [[cues]]
            state = ["warming", "printing"]
            look = "restless"
            fade_s = 2
            """;

    private static Config config() {
        return Configs.lines(TEXT);
    }

    @Test
    void aChainBeginsFreshWhateverAnotherHasSeen() {
        Config shared = config();
        new Job(Chain.of(shared)).whole();
        List<byte[]> second = new Job(Chain.of(shared)).whole();
        List<byte[]> fresh = new Job(Chain.of(config())).whole();
        assertSame(fresh, second);
        assertFalse(Arrays.equals(fresh.get(RATE), fresh.get(RATE + 1)), "nothing moves, so nothing is shown by this");
    }

    @Test
    void twoChainsAtOnceDoNotDisturbEachOther() {
        Config shared = config();
        Job early = new Job(Chain.of(shared));
        early.step();
        early.step();
        Job late = new Job(Chain.of(shared));
        while (!late.isOver()) {
            late.step();
            if (!early.isOver()) {
                early.step();
            }
        }
        List<byte[]> fresh = new Job(Chain.of(config())).whole();
        assertSame(fresh, early.frames);
        assertSame(fresh, late.frames);
    }

    /** A value within the margin of a cue that never held. */
    @Test
    void theMarginOfACueIsForgotten() {
        Config shared = Configs.of(3, "GRB", """
                [looks.hot]
                layers = [{ colour = "red" }]
                [[cues]]
                signal = "nozzle.actual_C"
                above = 40
                margin = 5
                look = "hot"
                """);
        assertEquals("hot", lookAt(50, Chain.of(shared)));
        assertEquals(lookAt(37, Chain.of(Configs.of(3, "GRB", ""))), lookAt(37, Chain.of(shared)));
    }

    private static String lookAt(double nozzleC, Chain chain) {
        PrinterStatus status = PrinterStatus.nothingHeard()
                .withState(PrinterState.IDLE, 0)
                .withReading(Quantity.NOZZLE_ACTUAL, nozzleC, 0);
        chain.make(status, 0, new Frame(9, 0));
        return chain.look();
    }

    private static void assertSame(List<byte[]> expected, List<byte[]> actual) {
        assertEquals(expected.size(), actual.size());
        for (int i = 0; i < expected.size(); i++) {
            assertArrayEquals(expected.get(i), actual.get(i), "frame " + i);
        }
    }

    /** A job through every state, with every reading, with a picture being taken, and people asking for things. */
    private static final class Job {
        private static final int SECONDS_A_STATE = 4;

        private final Chain chain;
        private final Frame frame = new Frame(120, 1);
        private final List<byte[]> frames = new ArrayList<>();
        private PrinterStatus status = PrinterStatus.nothingHeard();
        private Wishes wishes = Wishes.NONE;

        Job(Chain chain) {
            this.chain = chain;
        }

        boolean isOver() {
            return frames.size() == PrinterState.values().length * SECONDS_A_STATE * RATE;
        }

        List<byte[]> whole() {
            while (!isOver()) {
                step();
            }
            return frames;
        }

        void step() {
            int i = frames.size();
            long nanos = i * SECOND / RATE;
            if (i % RATE == 0) {
                tell(i / RATE, nanos);
            }
            chain.make(status, wishes, nanos, frame);
            byte[] bytes = Arrays.copyOf(frame.strip(), 124);
            bytes[120] = (byte) (frame.duties()[0] >> 8);
            bytes[121] = (byte) frame.duties()[0];
            bytes[122] = (byte) STATES.indexOf(chain.state());
            bytes[123] = (byte) ALARMS.indexOf(chain.alarm());
            frames.add(bytes);
        }

        private void tell(int second, long nanos) {
            PrinterState state = STATES.get(second / SECONDS_A_STATE);
            for (Quantity quantity : Quantity.values()) {
                double value = quantity == Quantity.JOB_PROGRESS ? second / 40.0 : 30 + second * 7 % 230;
                status = status.withReading(quantity, value, nanos);
            }
            status = status.withState(state, nanos);
            if (second % 3 == 1) {
                status = status.withEvent("camera", nanos + SECOND, nanos);
            }
            if (second % 5 == 2) {
                wishes = wishes.acknowledged().withBrightness(second % 2 == 0 ? 0.6 : 1);
            }
            if (second % 9 == 5) {
                wishes = wishes.withLook("restless", nanos + SECOND).reset();
            }
        }
    }
}
