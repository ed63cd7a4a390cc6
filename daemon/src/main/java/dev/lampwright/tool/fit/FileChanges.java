package dev.lampwright.tool.fit;

import dev.lampwright.toml.TomlEditor;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Writes what a step has found into an existing configuration: only the keys whose values have changed. */
final class FileChanges {
    private final TomlEditor file;
    private final Findings before;
    private final Findings after;

    private FileChanges(TomlEditor file, Findings before, Findings after) {
        this.file = file;
        this.before = before;
        this.after = after;
    }

    /**
     * Writes the differences.
     *
     * @param file the configuration
     * @param before what was known before
     * @param after what is known now
     */
    static void write(TomlEditor file, Findings before, Findings after) {
        FileChanges changes = new FileChanges(file, before, after);
        changes.supply();
        changes.strip();
        changes.currents();
        changes.mount();
        changes.zones();
        changes.dimmers();
        if (after.page() && !before.page()) {
            changes.set(Map.of(), "page");
        }
        if (!after.brightness().equals(before.brightness())) {
            changes.set(decimal(ConfigText.brightness(after)), "desk", "brightness");
        }
    }

    private void set(Object value, String... path) {
        file.set(List.of(path), value);
    }

    private void supply() {
        if (after.supply().equals(before.supply())) {
            return;
        }
        Findings.Supply supply = after.supply().orElseThrow();
        set(decimal(supply.volts()), "supply", "volts");
        set(supply.ceilingMilliamps(), "supply", "ceiling_mA");
        if (supply.amps().isPresent()) {
            set(decimal(supply.volts()), "wiring", "supplies", "strip", "volts");
            set(decimal(supply.amps().getAsDouble()), "wiring", "supplies", "strip", "amps");
        }
        supply.fuseAmps().ifPresent(amps -> set(decimal(amps), "wiring", "strip", "fuse_A"));
    }

    private void strip() {
        if (!after.order().equals(before.order())) {
            set(after.knownOrder(), "strip", "order");
        }
        if (after.knownPixels() != before.knownPixels()) {
            set(after.knownPixels(), "strip", "pixels");
        }
    }

    private void currents() {
        if (after.currents().equals(before.currents())) {
            return;
        }
        Findings.Currents currents = after.currents().orElseThrow();
        set(
                currents.channels().stream()
                        .map(each -> decimal(TypedNumbers.upToTenth(each.value())))
                        .toList(),
                "strip",
                "channel_mA");
        set(decimal(TypedNumbers.upToTenth(currents.idle().value())), "strip", "idle_mA");
    }

    private void mount() {
        if (after.mount().equals(before.mount())) {
            return;
        }
        Findings.Mount mount = after.mount().orElseThrow();
        boolean frame = mount.shape().equals("frame");
        set(mount.shape(), "strip", "shape");
        if (frame) {
            set(mount.sides(), "strip", "sides_px");
            set(mount.begins(), "strip", "begins");
        } else {
            file.remove(List.of("strip", "sides_px"));
            file.remove(List.of("strip", "begins"));
        }
        if (mount.shape().equals("straight")) {
            file.remove(List.of("strip", "clockwise"));
        } else {
            set(mount.clockwise(), "strip", "clockwise");
        }
    }

    private void zones() {
        after.zones().forEach((name, run) -> {
            if (!run.equals(before.zones().get(name))) {
                set(run.toString(), "zones", name);
            }
        });
    }

    private void dimmers() {
        if (after.dimmers().equals(before.dimmers())) {
            return;
        }
        Findings.Supply supply = after.dimmerSupply().orElseThrow();
        boolean own = supply.volts() != after.supply().orElseThrow().volts();
        for (DimmerLights.Entry entry :
                DimmerLights.of(after.dimmers(), after.zones().keySet())) {
            Map<String, Object> light = new LinkedHashMap<>();
            if (entry.channels().size() == 1) {
                light.put("channel", entry.channels().get(0));
            } else {
                light.put("channels", entry.channels());
            }
            light.put("volts", decimal(supply.volts()));
            light.put("full_mA", entry.fullMilliamps());
            if (own) {
                light.put("ceiling_mA", supply.ceilingMilliamps());
            }
            set(light, "dimmers", entry.name());
        }
        OptionalDouble amps = supply.amps();
        if (own && amps.isPresent()) {
            set(decimal(supply.volts()), "wiring", "supplies", "lights", "volts");
            set(decimal(amps.getAsDouble()), "wiring", "supplies", "lights", "amps");
        }
    }

    private static BigDecimal decimal(double number) {
        return new BigDecimal(TypedNumbers.shown(number));
    }
}
