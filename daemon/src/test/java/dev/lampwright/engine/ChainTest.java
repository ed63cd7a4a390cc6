package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.config.Config;
import dev.lampwright.look.LookSpec;
import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import dev.lampwright.tool.check.MadeUpStatus;
import java.io.ByteArrayOutputStream;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChainTest {
    private static final long SECOND = 1_000_000_000L;
    private static final long FRAME = SECOND / 60;
    private static final List<PrinterState> STATES = List.of(PrinterState.values());
    private static final String DIMMERS = """
            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }
            glow = { channels = [1, 2, 3], volts = 12, full_mA = 300 }
            """;

    private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    /** Everything that a chain sends while a printer behaves at random with a seed, from a given time on. */
    private static byte[] sent(Config config, long start, long seed) {
        Chain chain = Chain.of(config);
        SplittableRandom chance = new SplittableRandom(seed);
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        ByteArrayOutputStream sent = new ByteArrayOutputStream();
        PrinterStatus status = PrinterStatus.nothingHeard();
        for (int i = 0; i < 3000; i++) {
            long nanos = start + i * FRAME;
            if (chance.nextInt(40) == 0) {
                status = next(status, chance, nanos);
            }
            chain.make(status, nanos, frame);
            sent.writeBytes(frame.strip());
            Arrays.stream(frame.duties()).forEach(duty -> {
                sent.write(duty >> 8);
                sent.write(duty);
            });
        }
        return sent.toByteArray();
    }

    private static PrinterStatus next(PrinterStatus before, SplittableRandom chance, long nanos) {
        return before.withState(STATES.get(chance.nextInt(STATES.size())), nanos)
                .withReading(Quantity.JOB_PROGRESS, chance.nextDouble(), nanos)
                .withReading(Quantity.BED_SETPOINT, 60, nanos)
                .withReading(Quantity.BED_ACTUAL, 22 + 40 * chance.nextDouble(), nanos)
                .withReading(Quantity.NOZZLE_SETPOINT, 215, nanos)
                .withReading(Quantity.NOZZLE_ACTUAL, 22 + 200 * chance.nextDouble(), nanos);
    }

    @ParameterizedTest
    @ValueSource(strings = {DIMMERS, ", dithering = true"})
    void theSameStatusesAtTheSameTimesGiveTheSameBytes(String more) {
        byte[] once = sent(Configs.of(30, "GRB", more), SECOND, 9);
        assertArrayEquals(once, sent(Configs.of(30, "GRB", more), SECOND, 9));
        assertFalse(Arrays.equals(once, sent(Configs.of(30, "GRB", more), SECOND, 10)));
    }

    /** A monotonic clock may start anywhere, even below 0 (the JDK's documentation of System.nanoTime). */
    @ParameterizedTest
    @ValueSource(longs = {0, -20 * SECOND, 123_456_789_012_345L, Long.MAX_VALUE / 2})
    void whenItBeginsDoesNotMatter(long start) {
        assertArrayEquals(sent(Configs.of(30, "GRBW", ""), SECOND, 9), sent(Configs.of(30, "GRBW", ""), start, 9));
    }

    @ParameterizedTest
    @EnumSource
    void aFrameOfABuiltInLookAllocatesNothing(PrinterState state) {
        Config config = Configs.of(300, "GRBW", DIMMERS);
        LookSpec look = config.looks().get(state.word());
        assertAllocatesNothing(
                Chain.of(config.setup(), config.light().showing(look), config.framesPerSecond()), config);
    }

    @Test
    void aFrameWithFadesAllocatesNothing() {
        Config config = Configs.of(300, "GRB", ", dithering = true");
        assertAllocatesNothing(Chain.of(config), config);
    }

    /** A compiler that is still working may allocate on the thread's account; a leak of a byte per frame shows in every round. */
    private void assertAllocatesNothing(Chain chain, Config config) {
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        PrinterStatus[] statuses = new PrinterStatus[STATES.size()];
        Arrays.setAll(
                statuses,
                i -> MadeUpStatus.all(List.of()).get(MadeUpStatus.STEPS - 1).withState(STATES.get(i), 10 * SECOND));
        long least = Long.MAX_VALUE;
        for (int round = 0; round < 6; round++) {
            long before = threads.getThreadAllocatedBytes(Thread.currentThread().getId());
            for (int i = 0; i < 1000; i++) {
                long nanos = 10 * SECOND + (1000L * round + i) * FRAME / 10;
                chain.make(statuses[i / 50 % statuses.length], nanos, frame);
            }
            least = Math.min(
                    least,
                    threads.getThreadAllocatedBytes(Thread.currentThread().getId()) - before);
        }
        assertTrue(least < 1000, least + " bytes for 1000 frames");
    }

    @Test
    void dimmersFollowTheirLook() {
        Config config = Configs.of(7, "GRB", DIMMERS + """
                [looks.printing]
                dimmers = { work = { by = "job.progress", from = 1, to = 0 } }
                layers = [{ zone = "glow", colour = "color(srgb-linear 1 0.5 0.25)" }]
                """);
        Chain chain = Chain.of(config);
        Frame frame = new Frame(21, 4);
        PrinterStatus status = PrinterStatus.nothingHeard()
                .withState(PrinterState.PRINTING, 0)
                .withReading(Quantity.JOB_PROGRESS, 0.25, 0);
        chain.make(status, 0, frame);
        chain.make(status, 5 * SECOND, frame);
        assertEquals(0.75 * 65_535, frame.duties()[0], 1);
        assertEquals(65_535, frame.duties()[1], 40);
        assertEquals(0.5 * 65_535, frame.duties()[2], 40);
        assertEquals(0.25 * 65_535, frame.duties()[3], 40);
        assertArrayEquals(new byte[21], frame.strip());
        assertEquals("printing", chain.look());
        assertEquals(PrinterState.PRINTING, chain.state());
    }
}
