package dev.lampwright.endtoend;

import static dev.lampwright.endtoend.Picture.PIXELS;

import dev.lampwright.testing.Mosquitto;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * An invented printer called birch, with the configuration that lights it: plain looks without fades, so that every frame can be predicted.
 * What it reports is retained by its broker.
 *
 * @param broker where it publishes
 */
record Birch(Mosquitto broker) {
    /** The ceiling of the strip's supply, in mA. The look for a finished job demands more. */
    static final int CEILING_MILLIAMPS = 600;

    /** One channel of one pixel at full, in mA. */
    static final int CHANNEL_MILLIAMPS = 12;

    /** One dark pixel, in mA. */
    static final int DARK_MILLIAMPS = 1;

    /** Temperature of the room, in °C. */
    static final double ROOM_C = 22;

    /** The printer's own word for a heat-up. */
    static final String WARMING = "PREHEAT";
    /** The printer's own word for a running job. */
    static final String PRINTING = "RUN";
    /** The printer's own word for a fault, as far as it is the same for all. */
    static final String FAULT = "ALARM tip blocked";
    /** The printer's own word for a job that waits. */
    static final String HELD = "WAIT";
    /** The printer's own word for a completed job. */
    static final String DONE = "ENDED";
    /** The printer's own word for a cancelled job. */
    static final String STOPPED = "CALLED_OFF";
    /** The printer's own word for nothing to do. */
    static final String IDLE = "READY";

    /** The topic of its state and progress. */
    static final String JOB = "shop/birch/job";
    /** The topic of its temperatures. */
    static final String HEAT = "shop/birch/heat";

    private static final int WHITE = 0xffffff;
    private static final int RED = 0xff0000;
    private static final int GREEN = 0x00ff00;

    /**
     * Writes the configuration.
     *
     * @param folder where to
     * @param port serial port of the controller
     * @param baud its rate
     * @param brokerLines additional lines of the broker's section, or separate sections
     * @return the file
     */
    Path configure(Path folder, Path port, int baud, String... brokerLines) {
        List<String> url = new ArrayList<>(List.of("\"" + broker.url() + "\""));
        url.addAll(List.of(brokerLines));
        String text = text().replace("\"mqtt://127.0.0.1:1883\"", String.join("\n", url))
                .replace("/dev/ttyACM0", port.toString())
                .replace("500000", Integer.toString(baud));
        try {
            return Files.writeString(folder.resolve("birch.toml"), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Lines that lift the flash limit, for tests that change the state faster than the limit lets light follow: after a storm of changes it
     * takes about a second to count them out and another to return without a flash. The limit has its own tests.
     */
    static List<String> withoutFlashLimit() {
        return List.of("[guard]", "allow_flashing_that_can_cause_seizures = true");
    }

    private static String text() {
        try (InputStream file = Birch.class.getResourceAsStream("birch.toml")) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Reports what the printer is doing.
     *
     * @param phase one of its own words
     * @param percent the progress of the job
     */
    void tellJob(String phase, double percent) {
        broker.publish(JOB, job(phase, percent), true);
    }

    /** What it publishes about its job. */
    static String job(String phase, double percent) {
        return String.format(Locale.ROOT, "{\"phase\":\"%s\",\"percent\":%.1f}", phase, percent);
    }

    /** Tells temperatures, in °C. */
    void tellHeat(double bed, double bedTarget, double nozzle, double nozzleTarget) {
        String message = String.format(
                Locale.ROOT,
                "{\"plate\":{\"now\":%.1f,\"set\":%.1f},\"tip\":{\"now\":%.1f,\"set\":%.1f}}",
                bed,
                bedTarget,
                nozzle,
                nozzleTarget);
        broker.publish(HEAT, message, true);
    }

    /** What the strip shows in a state with a still look. */
    static Picture still(String phase) {
        return switch (phase) {
            case IDLE -> Picture.all(0x202020);
            case HELD -> Picture.all(0xff8000);
            case STOPPED -> Picture.all(0x800080);
            case FAULT -> Picture.all(RED);
            default -> throw new IllegalArgumentException(phase + " has a look that moves");
        };
    }

    /** What the strip shows before anything is heard. */
    static Picture silent() {
        return Picture.all(0x004080);
    }

    /** What the strip shows while the printer warms up. */
    static Picture warming(double bedShare, double nozzleShare) {
        return Picture.dark().bar(0, 9, bedShare, WHITE).bar(10, 19, nozzleShare, RED);
    }

    /** What the strip shows while the printer prints. */
    static Picture printing(double progress) {
        return Picture.dark().bar(29, 20, progress, GREEN);
    }

    /** What a strip draws from its supply, in mA: every pixel its dark current, every channel its share of full. */
    static double milliamps(List<Integer> strip) {
        return PIXELS * DARK_MILLIAMPS
                + strip.stream().mapToInt(Integer::intValue).sum() / 255.0 * CHANNEL_MILLIAMPS;
    }
}
