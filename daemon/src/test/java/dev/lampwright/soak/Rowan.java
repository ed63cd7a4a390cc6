package dev.lampwright.soak;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.WhenSilent;
import dev.lampwright.testing.Mosquitto;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * An invented printer called rowan. Each of its states has its own colour on the whole strip, so that a frame shows its state; the first
 * three pixels show which edition of the configuration is active: they are lit in one, and dark in the other.
 *
 * @param broker where it publishes
 */
record Rowan(Mosquitto broker) {
    /** Pixels of the strip. */
    static final int PIXELS = 30;
    /** Pixels that show the edition. */
    static final int EDITION_PIXELS = 3;
    /** The strip's ceiling, in mA. White, yellow and the like demand more. */
    static final int CEILING_MILLIAMPS = 600;
    /** The ceiling of the work light's supply, in mA. At full it demands more. */
    static final int WORK_CEILING_MILLIAMPS = 500;
    /** What the work light draws at full, in mA. */
    static final int WORK_MILLIAMPS = 800;
    /** One channel of one pixel at full, in µA. */
    static final int CHANNEL_MICROAMPS = 12_000;
    /** One dark pixel, in µA. */
    static final int DARK_MICROAMPS = 1_000;
    /** Ticks of the frame loop in a second. */
    static final int FRAMES_PER_S = 60;
    /** After this long without a message, in s, the state is silent. */
    static final int SILENT_AFTER_S = 7;

    /** The controller's set-up for the configuration. */
    static final Setup SETUP = new Setup(
            PIXELS,
            "GRB",
            Collections.nCopies(3, CHANNEL_MICROAMPS),
            DARK_MICROAMPS,
            0,
            3000,
            WhenSilent.DARK,
            List.of(CEILING_MILLIAMPS, WORK_CEILING_MILLIAMPS),
            List.of(new Setup.Dimmer(1, WORK_MILLIAMPS, 0)));
    /** The lights as seen by people. */
    static final Fitting FITTING = new Fitting(
            PIXELS, Map.of("edition", Zone.run(0, EDITION_PIXELS - 1)), List.of(Fitting.DimmerUse.white("work")));
    /** Of the two supplies. */
    static final List<Double> VOLTS = List.of(5.0, 24.0);

    private static final List<State> TOLD =
            List.of(State.IDLE, State.WARMING, State.PRINTING, State.HELD, State.DONE, State.FAULT);
    private static final int BAUD = 500_000;
    private static final Duration STORM_PACE = Duration.ofMillis(30);
    private static final String JOB = "shop/rowan/job";
    private static final String HEAT = "shop/rowan/heat";

    /** What it may be doing, with its colour as 0xRRGGBB; each channel is dark or full. */
    enum State {
        IDLE(0x00ffff),
        WARMING(0xffff00),
        PRINTING(0x00ff00),
        HELD(0xff00ff),
        DONE(0xffffff),
        FAULT(0xff0000),
        /** Nothing is heard. */
        SILENT(0x0000ff);

        private final int colour;

        State(int colour) {
            this.colour = colour;
        }

        /** Whether its light has red, green and blue. */
        boolean[] channels() {
            return new boolean[] {(colour & 0xff0000) != 0, (colour & 0xff00) != 0, (colour & 0xff) != 0};
        }
    }

    /** A random state for the printer to report, but not the given one. */
    static State next(State not, SplittableRandom chance) {
        State next = TOLD.get(chance.nextInt(TOLD.size()));
        return next == not ? next(not, chance) : next;
    }

    /**
     * The configuration.
     *
     * @param url of the broker
     * @param port of the controller
     * @param edition whether the pixels that tell the edition are lit
     */
    static String configuration(URI url, Path port, boolean edition) {
        StringBuilder text = new StringBuilder("""
                frames_per_s = %d
                broker.url = "%s"
                supply.ceiling_mA = %d
                strip = { pixels = %d, order = "GRB", channel_mA = %d, idle_mA = %d }
                zones.edition = "0-%d"
                dimmers.work = { channel = 0, volts = 24, full_mA = %d, ceiling_mA = %d }
                [controller]
                port = "%s"
                baud = %d
                holdover_s = 3
                when_silent = "dark"
                [printer]
                silent_after_s = %d
                [printer.readings]
                job.progress = { topic = "%s", at = "/percent", scale = 0.01 }
                bed.actual_C = { topic = "%s", at = "/plate" }
                chamber.actual_C = { topic = "shop/+/room" }
                [printer.state]
                topic = "%s"
                at = "/phase"
                """.formatted(
                        FRAMES_PER_S,
                        url,
                        CEILING_MILLIAMPS,
                        PIXELS,
                        CHANNEL_MICROAMPS / 1000,
                        DARK_MICROAMPS / 1000,
                        EDITION_PIXELS - 1,
                        WORK_MILLIAMPS,
                        WORK_CEILING_MILLIAMPS,
                        port,
                        BAUD,
                        SILENT_AFTER_S,
                        JOB,
                        HEAT,
                        JOB));
        TOLD.forEach(state -> text.append("%s = [\"%s\"]%n".formatted(word(state), state)));
        for (State state : State.values()) {
            text.append(look(state, edition));
        }
        return text.toString();
    }

    private static String look(State state, boolean edition) {
        return """
                [looks.%1$s]
                dimmers.work = %2$s
                layers = [{ colour = "#%3$06x" }%4$s]
                [[cues]]
                state = "%1$s"
                look = "%1$s"
                fade_s = 0
                """.formatted(
                        word(state),
                        state == State.PRINTING ? "1" : "0.25",
                        state.colour,
                        edition ? "" : ", { zone = \"edition\", colour = \"black\" }");
    }

    private static String word(State state) {
        return state.name().toLowerCase(Locale.ROOT);
    }

    /** Reports its state, retained. */
    void tell(State state) {
        broker.publish(JOB, job(state, 50), true);
    }

    private static String job(State state, int percent) {
        return "{\"phase\":\"" + state + "\",\"percent\":" + percent + "}";
    }

    /**
     * Reports a great deal at once, sense and nonsense, but no other state.
     *
     * @param state the state that it stays in
     */
    void flood(State state, int messages, SplittableRandom chance) {
        List<String> payloads = new ArrayList<>();
        for (int i = 0; i < messages; i++) {
            payloads.add(
                    switch (chance.nextInt(4)) {
                        case 0 -> "{\"phase\":" + chance.nextLong() + "}";
                        case 1 -> "{]" + Long.toHexString(chance.nextLong());
                        default -> job(state, chance.nextInt(101));
                    });
        }
        broker.publishAll(JOB, payloads);
    }

    /** Publishes retained messages on topics with an emoji in the middle, which every later connection receives too. */
    void strangeTopics(int celsius) {
        broker.publishAtEscaped("shop/\\360\\237\\224\\245/room", Integer.toString(celsius));
        broker.publishAtEscaped("shop/\\360\\237\\233\\217/room", Integer.toString(celsius));
    }

    /** Goes through many states, changing with about every second frame. */
    void storm(int messages, SplittableRandom chance) {
        List<String> payloads = new ArrayList<>();
        State state = State.IDLE;
        for (int i = 0; i < messages; i++) {
            state = next(state, chance);
            payloads.add(job(state, chance.nextInt(101)));
        }
        broker.publishPaced(JOB, payloads, STORM_PACE);
    }
}
