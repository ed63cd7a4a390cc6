package dev.lampwright.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.lampwright.config.Config;
import dev.lampwright.config.Mounting;
import dev.lampwright.look.Fitting;
import dev.lampwright.look.Zone;
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
        ObjectNode node = Messages.object()
                .put("layout", number)
                .put("version", version)
                .put("prefix", config.talk().prefix())
                .put("pixels", config.fitting().pixels())
                .put("flash_limit", !config.light().guard().allowFlashing())
                .put("quiet_hours", config.desk().quietHours().isPresent())
                .put("controller", config.controller().port())
                .put("broker", config.broker().url().toString());
        mounting(node, config.mounting());
        zones(node.putArray("zones"), config.fitting());
        lamps(node.putArray("lamps"), config.fitting());
        ArrayNode looks = node.putArray("looks");
        config.looks()
                .values()
                .forEach(look -> looks.addObject().put("name", look.name()).put("flashes", look.flashes()));
        return Messages.text(node);
    }

    private static void mounting(ObjectNode node, Mounting mounting) {
        node.put("shape", word(mounting.shape()))
                .put("begins", word(mounting.begins()))
                .put("clockwise", mounting.clockwise());
        ArrayNode sides = node.putArray("sides");
        mounting.sides().forEach(sides::add);
    }

    private static void zones(ArrayNode zones, Fitting fitting) {
        fitting.zones().forEach((name, zone) -> {
            if (zone.pixelCount() > 0 && zone.pixel(0) < fitting.pixels()) {
                ObjectNode node = zones.addObject().put("name", name).put("place", zone.toString());
                runs(node.putArray("runs"), zone);
            }
        });
    }

    /** Neighbouring pixels in the order of the zone, as first and last. */
    private static void runs(ArrayNode runs, Zone zone) {
        int from = 0;
        for (int i = 1; i <= zone.pixelCount(); i++) {
            if (i == zone.pixelCount() || !follows(zone, from, i)) {
                runs.addArray().add(zone.pixel(from)).add(zone.pixel(i - 1));
                from = i;
            }
        }
    }

    private static boolean follows(Zone zone, int from, int index) {
        int step = zone.pixel(index) - zone.pixel(index - 1);
        boolean first = index == from + 1;
        return Math.abs(step) == 1 && (first || step == zone.pixel(index - 1) - zone.pixel(index - 2));
    }

    private static void lamps(ArrayNode lamps, Fitting fitting) {
        for (String name : fitting.dimmerNames()) {
            ObjectNode lamp = lamps.addObject().put("name", name);
            ArrayNode dimmers = lamp.putArray("dimmers");
            boolean white = false;
            for (int i = 0; i < fitting.dimmers().size(); i++) {
                Fitting.DimmerUse use = fitting.dimmers().get(i);
                if (use.name().equals(name)) {
                    white = use.isWhite();
                    dimmers.add(i);
                }
            }
            lamp.put("white", white);
        }
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
