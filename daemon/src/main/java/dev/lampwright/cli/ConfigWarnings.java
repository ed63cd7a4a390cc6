package dev.lampwright.cli;

import dev.lampwright.colour.ColourVision;
import dev.lampwright.config.Config;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.tool.check.FlashCheck;
import dev.lampwright.tool.check.VisionCheck;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The warnings that {@code check} gives about a valid configuration. */
final class ConfigWarnings {
    private ConfigWarnings() {}

    /**
     * Draws the looks and collects warnings.
     *
     * @param config a valid configuration
     * @return one line each: what will never be shown, allowed flashing, missing files, and states that look alike to some people
     */
    static List<String> about(Config config) {
        List<String> misgivings = new ArrayList<>();
        config.talk()
                .printers()
                .forEach((printer, bindings) ->
                        misgivings.addAll(neverShown(printer.isEmpty() ? "printer" : "printers." + printer, bindings)));
        if (config.light().guard().allowFlashing()) {
            misgivings.add(
                    "guard.allow_flashing_that_can_cause_seizures: lifts the flash limit; remove it unless nobody who is"
                            + " sensitive to flashing light can ever see this");
            FlashCheck.of(config)
                    .forEach(flashing -> misgivings.add("looks." + flashing.look()
                            + ": flashes " + flashing.flashes()
                            + " times in a second, and more than three can cause seizures; make it calmer"));
        }
        misgivings.addAll(MissingFiles.of(config, System.getenv()));
        VisionCheck.of(config).forEach(alike -> misgivings.add(line(alike)));
        return misgivings;
    }

    /** Whether any of the printers' words or codes shows a fault. */
    static boolean showsFaults(Bindings bindings) {
        return bindings.tell(PrinterState.FAULT);
    }

    private static List<String> neverShown(String section, Bindings bindings) {
        List<String> never = new ArrayList<>();
        if (!showsFaults(bindings)) {
            never.add(section
                    + ".state.fault: is missing, so no fault will ever be shown; give the printer's words for one,"
                    + " or a " + section + ".condition");
        }
        if (bindings.readings().isEmpty()) {
            never.add(
                    section + ".readings: is missing, so neither heat-up nor progress will ever be shown; say where the"
                            + " printer reports its temperatures and its progress");
        }
        return never;
    }

    private static String line(VisionCheck.Alike alike) {
        return "looks." + alike.oneLook() + ", looks." + alike.otherLook() + ": " + word(alike.one()) + " and "
                + word(alike.other()) + " look alike to people "
                + alike.to().stream().map(ConfigWarnings::without).collect(Collectors.joining(" or "))
                + "; let them differ in shape or rhythm, not in colour alone";
    }

    private static String without(ColourVision vision) {
        return switch (vision) {
            case PROTAN -> "without red cones (protan)";
            case DEUTAN -> "without green cones (deutan)";
            case TRITAN -> "without blue cones (tritan)";
        };
    }

    private static String word(Enum<?> state) {
        return state.name().toLowerCase(Locale.ROOT);
    }
}
