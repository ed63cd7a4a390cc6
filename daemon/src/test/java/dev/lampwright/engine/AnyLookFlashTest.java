package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.cue.Wish;
import dev.lampwright.cue.Wishes;
import dev.lampwright.guard.EverySecond;
import dev.lampwright.look.Fitting;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.protocol.Frame;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

/**
 * The flash limit through the whole chain, driven to provoke flashes: random looks with quick rhythms and movements, states ten times a
 * second, looks asked for twenty times a second, and a file with other looks and zones read again in between. Counted by
 * {@link EverySecond}, which shares no code with the guard. Source of the limit: WCAG 2.2, success criterion 2.3.1.
 */
class AnyLookFlashTest {
    private static final int RATE = 60;
    private static final int FRAMES = (int) (2.2 * RATE);
    private static final List<String> COLOURS = List.of("white", "red", "black", "lime", "#300", "orangered", "#888");
    private static final List<PrinterState> STATES =
            List.of(PrinterState.IDLE, PrinterState.WARMING, PrinterState.PRINTING, PrinterState.FAULT);

    @Property(tries = 400, shrinking = ShrinkingMode.OFF, edgeCases = EdgeCasesMode.NONE)
    void neverMoreThanThreeFlashes(@ForAll long seed, @ForAll @IntRange(min = 2, max = 40) int pixels) {
        SplittableRandom chance = new SplittableRandom(seed);
        Config config = config(chance, pixels);
        Chain chain = Chain.of(config);
        EverySecond counter = new EverySecond(
                config.setup(),
                new Fitting(pixels, Map.of(), config.fitting().dimmers()),
                config.light().guard().volts());
        Frame frame = new Frame(config.setup().stripBytes(), 1);
        PrinterStatus status = PrinterStatus.nothingHeard();
        Wishes wishes = Wishes.NONE;
        int readAgain = 20 + chance.nextInt(80);
        for (int tick = 0; tick < FRAMES; tick++) {
            long nanos = tick * 1_000_000_000L / RATE;
            status = tick % 6 == 0 ? status.withState(STATES.get(chance.nextInt(STATES.size())), nanos) : status;
            wishes = tick % 3 == 0 && tick < FRAMES / 2
                    ? Wishes.NONE.with(Wish.LOOK, "look" + chance.nextInt(STATES.size()), nanos + 1_000_000_000L)
                    : wishes;
            if (tick % readAgain == readAgain - 1) {
                Chain next = Chain.after(chain, config(chance, pixels));
                assertTrue(next.takeOver(chain), "the same lights");
                chain = next;
            }
            chain.make(status, wishes, nanos, frame);
            counter.see(frame, nanos);
        }
        Statistics.label("held")
                .collect(chain.guard().heldFrames() > 0)
                .coverage(coverage -> coverage.check(true).percentage(percentage -> percentage > 50));
        int most = counter.most();
        assertTrue(most <= 3, most + " flashes in a second");
    }

    private static Config config(SplittableRandom chance, int pixels) {
        String looks = IntStream.range(0, STATES.size())
                .mapToObj(i -> "[looks.look" + i + "]\nlayers = [" + layer(chance) + ", " + layer(chance)
                        + "]\ndimmers.work = " + chance.nextInt(2) + "\n")
                .collect(Collectors.joining());
        String cues = IntStream.range(0, STATES.size())
                .mapToObj(i -> "[[cues]]\nstate = \"" + STATES.get(i).word() + "\"\nlook = \"look" + i + "\"\n"
                        + fade(i, chance))
                .collect(Collectors.joining());
        int end = chance.nextInt(pixels);
        return Configs.of(
                pixels,
                "GRB",
                "dimmers.work = { channel = 0, volts = 24, full_mA = 800 }\nzones.job = \"" + chance.nextInt(end + 1)
                        + "-" + end + "\"\n" + looks + cues);
    }

    /** A fault cuts in at once, whatever the file says, so the file must not set a fade. */
    private static String fade(int state, SplittableRandom chance) {
        return STATES.get(state) == PrinterState.FAULT ? "" : "fade_s = " + chance.nextInt(2) * 0.2 + "\n";
    }

    private static String layer(SplittableRandom chance) {
        String colour = COLOURS.get(chance.nextInt(COLOURS.size()));
        String zone = chance.nextBoolean() ? "zone = \"job\", " : "";
        String what = switch (chance.nextInt(9)) {
            case 0 -> "colour = \"" + colour + "\", rhythm = \"Iso 0." + (2 + chance.nextInt(8)) + "s\"";
            case 1 -> "colour = \"" + colour + "\", rhythm = \"swell 0." + (2 + chance.nextInt(8)) + "s\"";
            case 2 ->
                "colour = \"" + colour + "\", extent = \"band\", width_px = 2, repeat_px = 5, speed_px_per_s = "
                        + (chance.nextInt(300) - 150);
            case 3 ->
                "paint = \"ramp\", colours = [\"" + colour + "\", \"black\", \"" + colour + "\"], speed_px_per_s = "
                        + (chance.nextInt(300) - 150);
            case 4 ->
                "colour = \"" + colour + "\", rhythm = \"on 0." + (1 + chance.nextInt(9)) + "s off 0."
                        + (1 + chance.nextInt(9)) + "s\", edge_s = 0, phase = 0." + chance.nextInt(10);
            case 5 ->
                "paint = \"palette\", colours = [\"" + colour + "\", \"blue\"], extent = \"grains\", density = 0."
                        + chance.nextInt(10) + ", glint_s = 0." + (1 + chance.nextInt(9));
            case 6 ->
                "colour = \"" + colour + "\", extent = \"band\", tail_px = 3, back_and_forth = true, speed_px_per_s = "
                        + (1 + chance.nextInt(150));
            case 7 ->
                "paint = \"ramp\", colours = [\"" + colour + "\", \"black\"], spread = 0, steps = true, cycle_s = 0."
                        + (5 + chance.nextInt(5));
            default -> "paint = \"ember\", strikes_per_px_s = " + chance.nextInt(30) + ", strike_K = 2000";
        };
        return "{ " + zone + what + " }";
    }
}
