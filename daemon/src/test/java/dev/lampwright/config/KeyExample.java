package dev.lampwright.config;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Writes the commented example, a configuration for the invented printer alder, from the table of keys. */
final class KeyExample {
    private static final int COMMENTS_AT = 40;
    private static final Map<String, String> JOB = Map.of("topic", "\"shop/alder/job\"", "at", "\"/phase\"");

    private final StringBuilder text = new StringBuilder();

    private KeyExample() {}

    static String text() {
        KeyExample example = new KeyExample();
        example.all();
        return example.text.toString();
    }

    private void all() {
        put("""
                # A configuration of Lampwright for an invented printer, alder. TOML 1.0; numbers carry their unit in the key.
                # Required: broker.url, at least one place where the printer reports something, controller.port, strip.pixels.
                # `lampwright check FILE` says what is wrong with a file, and which defaults apply to keys that it leaves out.

                """);
        keys(ConfigFile.SECTION, Map.of());
        table(BrokerSection.SECTION, "broker", Map.of());
        table(PrinterSection.SECTION, "printer", Map.of());
        table(
                StateSection.SECTION,
                "printer.state",
                with(
                        JOB,
                        Map.of(
                                "idle",
                                "[\"READY\"]",
                                "warming",
                                "[\"PREHEAT\"]",
                                "printing",
                                "[\"RUN\"]",
                                "held",
                                "[\"WAIT\"]",
                                "done",
                                "[\"ENDED\"]",
                                "stopped",
                                "[\"CALLED_OFF\"]",
                                "fault",
                                "[\"ALARM*\"]")));
        put("""

                # [[printer.condition]]                   # a state shown by flags, by a fault code or by a text: the first that is met counts before printer.state
                # state = "fault"
                # topic = "shop/alder/trouble"
                # at = "/code"
                # not = ["0"]                             # any other code is a fault; is = ["*"] takes any text that is not empty
                # and = [{ topic = "shop/alder/flags", at = "/armed", is = ["true"] }]    # what has to be met as well

                # A place is a topic and, where the value is a part of the payload, at; if it is a part of a text, field and separator, or pattern.
                # A state or a reading that is reported in several places has an array of them, and the newest message counts.
                # Numbers: number × scale + offset, in the unit of the key unless unit says otherwise.
                [printer.readings]
                bed.actual_C    = { topic = "shop/alder/heat", at = "/plate/now" }
                bed.setpoint_C    = { topic = "shop/alder/heat", at = "/plate/set" }
                nozzle.actual_C = { topic = "shop/alder/heat", at = "/tip/now" }
                nozzle.setpoint_C = { topic = "shop/alder/heat", at = "/tip/set" }
                job.progress    = { topic = "shop/alder/job", at = "/percent", unit = "percent" }
                # job.left_s    = { topic = "shop/alder/job", at = "/left", unit = "min" }
                # job.elapsed_s, or job.done and job.total (layers, lines, bytes), give progress where the printer does not report it
                # print_speed   = { topic = "shop/alder/job", at = "/speed", unit = "percent", range = [0, 200] }   # any name of your own: a signal, too
                """);
        table(WillSection.SECTION, "printer.will", Map.of("topic", "\"shop/alder/link\"", "at", ""));
        table(EventsSection.SECTION, "printer.events.camera", Map.of("topic", "\"shop/alder/camera\"", "at", ""));
        table(ControllerSection.SECTION, "controller", Map.of());
        table(SupplySection.SECTION, "supply", Map.of());
        table(StripSection.SECTION, "strip", Map.of());
        table(WiringSection.SECTION, "wiring", Map.of());
        put("""

                [wiring.supplies]                       # each known by its volts
                strip = { volts = 5, amps = 3 }
                lamps = { volts = 24, amps = 2 }
                """);
        table(WiredStrip.SECTION, "wiring.strip", Map.of());
        table(WiredLight.SECTION, "wiring.dimmers.work", Map.of("connector_A", "2", "fuse_A", "1.25"));
        table(WiringSection.BOARD, "wiring.board", Map.of());
        table(WiringSection.COMPUTER, "wiring.computer", Map.of());
        put("""

                [zones]                                 # pixel 0 is nearest the controller
                bed = "0-9"
                nozzle = "10-19"
                job = "29-20"                           # counted backwards: this zone runs towards the controller
                sides = "0-9 + 29-20 mirrored"          # two runs as one, folded in the middle: what is drawn on it begins at both ends

                # Several printers on one strip: [printers.NAME] in place of [printer], with the same keys; each shows on its view, a part of the strip.
                # [views.alder]
                # pixels = "0-14"                         # an equal share without any views
                # lights = ["glow"]                       # lamps and plain colour strips that show this printer alone
                # zones = { bed = "0-6" }                 # halves without it; pixels are counted along the whole strip

                [dimmers]                               # plain lights on the controller's PWM outputs, numbered from 0
                work = { channel = 0, volts = 24, full_mA = 800 }
                glow = { channels = [1, 2, 3], volts = 12, full_mA = 300 }    # a plain colour strip: red, green, blue; a zone of one pixel
                """);
        table(GuardSection.SECTION, "guard", Map.of());
        table(AlarmSection.SECTION, "alarm", Map.of());
        table(DeskSection.SECTION, "desk", Map.of());
        table(DeskSection.QUIET, "quiet", Map.of());
        table(ConfigFile.HISTORY, "history", Map.of());
        table(ConfigFile.METRICS, "metrics", Map.of());
        table(PageSection.SECTION, "page", Map.of());
        put("""

                # There are built-in looks and cues for every state. One of the same name takes the place of a built-in look.
                [looks.preheat]
                dimmers = { work = 0.2 }                # 0 to 1, or by a signal: { by = "job.progress" }
                layers = [                              # the lowest first
                  { colour = "midnightblue", opacity = 0.2 },
                  { zone = "bed", paint = "scale", colours = ["midnightblue", "orangered"], by = "bed.heat", extent = "bar", softness_px = 1 },
                  { zone = "nozzle", paint = "scale", colours = ["midnightblue", "orangered"], by = "nozzle.heat", extent = "bar" },
                  { zone = "job", colour = "orangered", extent = "band", width_px = 1, tail_px = 4, speed_px_per_s = 2, opacity = 0.4 },
                  { zone = "glow", colour = "oklch(70% 0.15 50)", opacity_by = "nozzle.actual_C", opacity_from = 40, opacity_to = 220, rhythm = "swell 4s" },
                ]

                # More that layers can do, one in each line; every motion with its lines and a picture is in motions.md of the handbook.
                # [looks.more]
                # layers = [
                #   { paint = "ramp", colours = ["tomato", "gold", "teal"], ring = true, spread = 0, cycle_s = 60 },       # the whole strip through colours
                #   { colour = "gold", rhythm = "on 0.5s off 1.5s", edge_s = 0, phase = 0.5 },                             # hard blinking, begun later
                #   { colour = "red", extent = "band", tail_px = 6, cycle_s = 4, back_and_forth = true },                  # a band that turns at the ends
                #   { paint = "palette", colours = ["tomato", "gold", "teal"], extent = "grains", glint_s = 2 },           # glints in several colours
                #   { colour = "red", opacity_by = "chamber.actual_C", dark_below = 40, full_above = 55, rhythm = "Q" },   # a warning that grows
                #   { paint = "ember" },                                                                                   # a fire
                # ]
                """);
        table(CuesSection.SECTION, "[cues]", Map.of());
    }

    private static Map<String, String> with(Map<String, String> some, Map<String, String> others) {
        Map<String, String> all = new HashMap<>(some);
        all.putAll(others);
        return all;
    }

    private void put(String lines) {
        text.append(lines);
    }

    private void table(Section section, String header, Map<String, String> values) {
        boolean shown = section.keys().stream().anyMatch(Key::shown);
        put("\n");
        line((shown ? "" : "# ") + '[' + header + ']', section.help());
        keys(section, values);
    }

    /** Its keys, with other values for some; without those that have an empty one or are of places and not in force. */
    private void keys(Section section, Map<String, String> values) {
        List<Key<?>> ofPlaces = SourceKeys.KEYS;
        for (Key<?> key : section.keys()) {
            String value = values.getOrDefault(key.name(), key.example());
            if (!value.isEmpty() && (key.shown() || !ofPlaces.contains(key))) {
                line((key.shown() ? "" : "# ") + key.name() + " = " + value, key.help());
            }
        }
    }

    private void line(String toml, String comment) {
        String pad = " ".repeat(Math.max(1, COMMENTS_AT - toml.length()));
        put((comment.isEmpty() ? toml : toml + pad + "# " + comment) + "\n");
    }
}
