package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.config.Swatches;
import dev.lampwright.cue.AlarmState;
import dev.lampwright.cue.Condition;
import dev.lampwright.cue.CueSpec;
import dev.lampwright.engine.Chain;
import dev.lampwright.engine.MidJob;
import dev.lampwright.look.LookSpec;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.protocol.Frame;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The looks that there are, with what is to be known before one of them is changed. */
final class LookList {
    private final Config config;
    private final LookShelves shelves;
    private final String on;
    private final Map<PrinterState, String> byState;

    /**
     * Prepares to list looks.
     *
     * @param config what is running
     * @param shelves where looks stand
     * @param on the look that is on
     */
    LookList(Config config, LookShelves shelves, String on) {
        this.config = config;
        this.shelves = shelves;
        this.on = on;
        byState = byState(config);
    }

    /** What each state puts on, with a printer in the middle of its job. */
    private static Map<PrinterState, String> byState(Config config) {
        Map<PrinterState, String> looks = new LinkedHashMap<>();
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        for (PrinterState state : PrinterState.values()) {
            Chain chain = Chain.of(config);
            chain.make(MidJob.status(state, config.bindings().own().keySet()), 0, frame);
            looks.put(state, chain.look());
        }
        return looks;
    }

    /** An object of JSON for each. */
    List<Map<String, Object>> all() {
        List<Map<String, Object>> all = new ArrayList<>();
        for (String name : shelves.names()) {
            shelves.find(name).ifPresent(found -> all.add(told(found)));
        }
        return all;
    }

    private Map<String, Object> told(LookShelves.Found found) {
        String name = found.look().name();
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("name", name);
        told.put("from", found.from().word());
        told.put(
                "replaces",
                shelves.below(name)
                        .map(LookShelves.Found::from)
                        .map(LookShelves.From::word)
                        .orElse(""));
        told.put("version", found.version());
        told.put("flashes", flashes(name));
        told.put(
                "states",
                byState.entrySet().stream()
                        .filter(entry -> entry.getValue().equals(name))
                        .map(entry -> entry.getKey().word())
                        .toList());
        told.put("fault", isOfFault(config, name));
        told.put("on", name.equals(on));
        if (found.from() == LookShelves.From.SWATCH) {
            told.put("use", Swatches.named(name).use());
            told.put("sentence", Swatches.named(name).sentence());
        }
        return told;
    }

    private boolean flashes(String name) {
        return Optional.ofNullable(config.looks().get(name))
                .map(LookSpec::flashes)
                .orElseGet(() -> Swatches.names().contains(name) && Swatches.flashes(name, config.fitting()));
    }

    /** Whether a look shows a fault, its acknowledgement or its end. */
    static boolean isOfFault(Config config, String look) {
        return config.cues().stream().anyMatch(cue -> cue.look().name().equals(look) && isOfFault(cue));
    }

    /** Whether a cue is for a fault, its acknowledgement or its end. */
    static boolean isOfFault(CueSpec cue) {
        return cue.conditions().stream().anyMatch(LookList::isOfFault);
    }

    private static boolean isOfFault(Condition condition) {
        return condition.states().contains(PrinterState.FAULT)
                || (condition instanceof Condition.InAlarm alarm
                        && alarm.alarms().stream().anyMatch(state -> state != AlarmState.NORMAL));
    }
}
