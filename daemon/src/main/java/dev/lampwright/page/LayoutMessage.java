package dev.lampwright.page;

import dev.lampwright.config.Config;
import dev.lampwright.config.Mounting;
import dev.lampwright.config.Swatches;
import dev.lampwright.json.JsonArray;
import dev.lampwright.json.JsonObject;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
import dev.lampwright.payload.OwnQuantity;
import java.util.Locale;

/** What is fitted, how it is mounted, and what can be asked for, as the page is told of it. */
final class LayoutMessage {
    private LayoutMessage() {}

    /**
     * The message.
     *
     * @param number of this layout; frames name the one that they are for
     * @param version of the daemon
     * @param config what it runs
     * @return JSON in one line
     */
    static String of(int number, String version, Config config) {
        JsonObject message = new JsonObject()
                .put("layout", number)
                .put("version", version)
                .put("prefix", config.talk().prefix())
                .put("pixels", config.fitting().pixels())
                .put("flash_limit", !config.light().guard().allowFlashing())
                .put("quiet_hours", config.desk().quietHours().isPresent())
                .put("controller", config.controller().port())
                .put("broker", config.broker().url().toString());
        mounting(message, config.mounting());
        return message.put("zones", zones(config.fitting()))
                .put("lamps", lamps(config.fitting()))
                .put("looks", looks(config))
                .put("swatches", swatches())
                .put("own_readings", ownReadings(config))
                .text();
    }

    private static void mounting(JsonObject message, Mounting mounting) {
        JsonArray sides = new JsonArray();
        mounting.sides().forEach(sides::add);
        message.put("shape", word(mounting.shape()))
                .put("begins", word(mounting.begins()))
                .put("clockwise", mounting.clockwise())
                .put("sides", sides);
    }

    private static JsonArray looks(Config config) {
        JsonArray looks = new JsonArray();
        config.looks()
                .values()
                .forEach(look ->
                        looks.add(new JsonObject().put("name", look.name()).put("flashes", look.flashes())));
        return looks;
    }

    /** What the configuration has names of its own for; without a range there is none of low and high. */
    private static JsonArray ownReadings(Config config) {
        JsonArray readings = new JsonArray();
        for (OwnQuantity own : config.bindings().own().keySet()) {
            readings.add(new JsonObject()
                    .put("name", own.key())
                    .put("unit", own.unit())
                    .put("low", own.low())
                    .put("high", own.high()));
        }
        return readings;
    }

    /** Finished looks that can be asked for although no cue may put them on. */
    private static JsonArray swatches() {
        JsonArray swatches = new JsonArray();
        Swatches.names().forEach(name -> swatches.add(new JsonObject().put("name", name)));
        return swatches;
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

    private static JsonArray lamps(Fitting fitting) {
        JsonArray lamps = new JsonArray();
        for (String name : fitting.dimmerNames()) {
            JsonArray dimmers = new JsonArray();
            boolean white = false;
            for (int i = 0; i < fitting.dimmers().size(); i++) {
                Fitting.DimmerUse use = fitting.dimmers().get(i);
                if (use.name().equals(name)) {
                    white = use.isWhite();
                    dimmers.add(i);
                }
            }
            lamps.add(new JsonObject().put("name", name).put("dimmers", dimmers).put("white", white));
        }
        return lamps;
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
