package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.config.Mounting;
import dev.lampwright.config.Swatches;
import dev.lampwright.cue.Condition;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.printer.PrinterState;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is fitted, how it is mounted, and what can be asked for, as sent to the page. */
final class LayoutMessage {
    private static final Set<PrinterState> TROUBLED = Set.of(PrinterState.FAULT, PrinterState.SILENT);

    private LayoutMessage() {}

    /**
     * The message.
     *
     * @param number of this layout; frames refer to it by number
     * @param version of the daemon
     * @param oneOfSeveral whether its page is below the shelf of all rigs
     * @param config its configuration
     * @return JSON in one line
     */
    static String of(int number, String version, boolean oneOfSeveral, Config config) {
        JsonObject message = new JsonObject()
                .put("layout", number)
                .put("version", version)
                .put("shelf", oneOfSeveral)
                .put("prefix", config.talk().prefix())
                .put("pixels", config.fitting().pixels())
                .put("flash_limit", !config.light().guard().allowFlashing())
                .put("controller", config.controller().port())
                .put("broker", config.broker().url().toString());
        config.desk()
                .quietHours()
                .ifPresent(hours -> message.put(
                        "quiet_hours",
                        new JsonObject()
                                .put("from", hours.from().toString())
                                .put("to", hours.to().toString())));
        mounting(message, config.mounting());
        return message.put("zones", zones(config.fitting()))
                .put("views", views(config.light()))
                .put("lamps", lamps(config.fitting(), config.mounting()))
                .put("looks", looks(config))
                .put("swatches", swatches(config.fitting()))
                .text();
    }

    private static void mounting(JsonObject message, Mounting mounting) {
        JsonArray sides = new JsonArray();
        mounting.sides().forEach(sides::add);
        message.put("shape", word(mounting.shape()))
                .put("begins", word(mounting.begins()))
                .put("clockwise", mounting.clockwise())
                .put("sides", sides)
                .put("seen_as", word(mounting.seenAs()));
    }

    private static JsonArray looks(Config config) {
        Set<String> warnings = warnings(config.light().cues());
        JsonArray looks = new JsonArray();
        config.looks()
                .values()
                .forEach(look -> looks.add(new JsonObject()
                        .put("name", look.name())
                        .put("flashes", look.flashes())
                        .put("warns", warnings.contains(look.name()))));
        return looks;
    }

    /** Ready-made looks that can be asked for although no cue uses them; those for faults mean that something is wrong. */
    private static JsonArray swatches(Fitting fitting) {
        JsonArray swatches = new JsonArray();
        for (String name : Swatches.names()) {
            swatches.add(new JsonObject()
                    .put("name", name)
                    .put("flashes", Swatches.flashes(name, fitting))
                    .put("warns", Swatches.named(name).use().equals("fault")));
        }
        return swatches;
    }

    /**
     * The looks that mean that something is wrong: those of cues for a fault or an alarm, and the last, for a printer that reports nothing.
     */
    private static Set<String> warnings(List<CueSpec> cues) {
        return Stream.concat(
                        cues.stream().filter(cue -> cue.conditions().stream().anyMatch(LayoutMessage::isWarning)),
                        Stream.of(cues.get(cues.size() - 1)))
                .map(cue -> cue.look().name())
                .collect(Collectors.toUnmodifiableSet());
    }

    private static boolean isWarning(Condition condition) {
        return condition instanceof Condition.InAlarm
                || (!condition.states().isEmpty() && TROUBLED.containsAll(condition.states()));
    }

    private static JsonArray zones(Fitting fitting) {
        JsonArray zones = new JsonArray();
        fitting.zones().forEach((name, zone) -> {
            if (zone.pixelCount() > 0 && zone.pixel(0) < fitting.pixels()) {
                zones.add(new JsonObject()
                        .put("name", name)
                        .put("place", zone.toString())
                        .put("runs", runs(zone)));
            }
        });
        return zones;
    }

    /** The parts of the strip that show one printer each. */
    private static JsonArray views(LightSpec light) {
        JsonArray views = new JsonArray();
        light.views()
                .forEach(view -> views.add(new JsonObject()
                        .put("name", view.name())
                        .put("printer", light.printers().get(view.printer()).name())
                        .put("place", view.pixels().toString())));
        return views;
    }

    /** Neighbouring pixels in the order of the zone, as first and last. */
    private static JsonArray runs(Zone zone) {
        JsonArray runs = new JsonArray();
        int from = 0;
        for (int i = 1; i <= zone.pixelCount(); i++) {
            if (i == zone.pixelCount() || !follows(zone, from, i)) {
                runs.add(new JsonArray().add(zone.pixel(from)).add(zone.pixel(i - 1)));
                from = i;
            }
        }
        return runs;
    }

    private static boolean follows(Zone zone, int from, int index) {
        int step = zone.pixel(index) - zone.pixel(index - 1);
        boolean first = index == from + 1;
        return Math.abs(step) == 1 && (first || step == zone.pixel(index - 1) - zone.pixel(index - 2));
    }

    /** Without unused outputs. */
    private static JsonArray lamps(Fitting fitting, Mounting mounting) {
        JsonArray lamps = new JsonArray();
        mounting.lamps().forEach((name, side) -> {
            JsonArray dimmers = new JsonArray();
            boolean white = false;
            for (int i = 0; i < fitting.dimmers().size(); i++) {
                Fitting.DimmerUse use = fitting.dimmers().get(i);
                if (use.name().equals(name)) {
                    white = use.isWhite();
                    dimmers.add(i);
                }
            }
            lamps.add(new JsonObject()
                    .put("name", name)
                    .put("dimmers", dimmers)
                    .put("white", white)
                    .put("hangs", word(side)));
        });
        return lamps;
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
