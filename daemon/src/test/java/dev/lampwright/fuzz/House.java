package dev.lampwright.fuzz;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The configuration under attack: an invented printer called alder that reports in every possible way. */
final class House {
    /** Pixels of the strip. */
    static final int PIXELS = 30;

    static final String JOB = "shop/alder/job";
    static final String LINK = "shop/alder/link";
    static final String CAMERA = "shop/alder/camera";

    /** Bound topics. */
    static final List<String> TOPICS = List.of(
            JOB,
            "shop/alder/heat",
            "shop/alder/line",
            "shop/alder/report",
            "shop/hall/room",
            "shop/alder/left",
            "shop/alder/trouble",
            LINK,
            CAMERA);

    /** Keys and words with a meaning in a message. */
    static final List<String> WORDS = Stream.concat(
                    Stream.of(
                            "phase", "percent", "plate", "now", "set", "text", "T", "offline", "SNAP", "SNAPPED", "id"),
                    Stream.of(Colour.values()).map(Colour::word))
            .toList();

    private House() {}

    /**
     * The file.
     *
     * @param broker port of the broker
     * @param controller device node of the controller
     * @param page port of the live page
     * @param metrics port of the metrics
     */
    static String file(int broker, Path controller, int page, int metrics) {
        String top = """
            frames_per_s = 60
            broker.url = "mqtt://127.0.0.1:%d"
            page.port = %d
            metrics.port = %d
            supply.ceiling_mA = 600
            strip = { pixels = %d, order = "GRB", channel_mA = 12, idle_mA = 1 }
            zones.left = "0-9"
            dimmers.work = { channel = 0, volts = 24, full_mA = 800, ceiling_mA = 500 }
            [controller]
            port = "%s"
            baud = 500000
            holdover_s = 3
            when_silent = "dark"
            """.formatted(broker, page, metrics, PIXELS, controller);
        String printer = """
            [printer]
            silent_after_s = 20
            fault_text = { topic = "shop/alder/trouble", at = "/text" }
            [printer.will]
            topic = "shop/alder/link"
            gone = ["offline"]
            [printer.events.camera]
            topic = "shop/alder/camera"
            begin = ["SNAP"]
            end = ["SNAPPED"]
            lasts_s = 1
            [printer.readings]
            job.progress = { topic = "shop/alder/job", at = "/percent", unit = "percent" }
            bed.actual_C = { topic = "shop/alder/heat", at = "/plate/now" }
            bed.setpoint_C = { topic = "shop/alder/heat", at = "/plate/set" }
            nozzle.actual_C = { topic = "shop/alder/line", field = 2, separator = ";" }
            nozzle.setpoint_C = { topic = "shop/alder/report", pattern = 'T=(?<value>[0-9.]+)' }
            chamber.actual_C = { topic = "shop/+/room" }
            job.left_s = { topic = "shop/alder/left", unit = "min" }
            [printer.state]
            topic = "shop/alder/job"
            at = "/phase"
            """;
        String words = Stream.of(Colour.values())
                .map(colour -> "%s = [\"%s\"]%n".formatted(colour.key(), colour.word()))
                .collect(Collectors.joining());
        String looks = Stream.of(Colour.values()).map(Colour::lines).collect(Collectors.joining());
        return top + printer + words + looks;
    }

    /** A message that reports a state. */
    static String job(Colour colour) {
        return "{\"phase\":\"" + colour.word() + "\",\"percent\":50}";
    }
}
