package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Setup;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What the user takes away from a fitting: what is fitted, what it may draw, and what is still uncertain. */
final class HandOver {
    private static final double MICRO = 1000;
    private static final Pattern FAULT_GUESSED = Pattern.compile("(?m)^fault = .*# not heard");

    private final Findings found;
    private final boolean faults;
    private final Path file;

    private HandOver(Findings found, boolean faults, Path file) {
        this.found = found;
        this.faults = faults;
        this.file = file;
    }

    /**
     * Summarises a fitting.
     *
     * @param found all that was found
     * @param faults whether any of the printer's words or codes shows a fault
     * @param file where it is written
     * @return lines for the user
     */
    static List<String> lines(Findings found, boolean faults, Path file) {
        HandOver over = new HandOver(found, faults, file);
        List<String> lines = new ArrayList<>();
        lines.add("Fitted:");
        over.fitted().forEach(line -> lines.add("  - " + line));
        lines.add("It may draw:");
        over.draw().forEach(line -> lines.add("  - " + line));
        List<String> uncertain = over.uncertain();
        if (!uncertain.isEmpty()) {
            lines.add("Uncertain:");
            uncertain.forEach(line -> lines.add("  - " + line));
        }
        lines.add("");
        return lines;
    }

    private List<String> fitted() {
        List<String> fitted = new ArrayList<>();
        fitted.add(found.knownPixels() + " pixels, order " + found.knownOrder() + ", at "
                + found.board().orElseThrow().port());
        found.zones().forEach((name, run) -> fitted.add("zone " + name + ": pixels " + run));
        for (DimmerLights.Entry light :
                DimmerLights.of(found.dimmers(), found.zones().keySet())) {
            fitted.add("light " + light.name() + ": dimmer "
                    + light.channels().stream().map(Object::toString).collect(Collectors.joining(", ")));
        }
        return fitted;
    }

    private List<String> draw() {
        List<String> draw = new ArrayList<>();
        Findings.Supply supply = found.supply().orElseThrow();
        Setup setup = FittingSetups.of(found);
        long full = Math.round(setup.pixels()
                * (setup.darkMicroamps()
                        + (double) setup.channelMicroamps().stream()
                                .mapToInt(Integer::intValue)
                                .sum())
                / MICRO);
        draw.add("the strip: " + Math.min(full, supply.ceilingMilliamps()) + " mA at "
                + TypedNumbers.shown(supply.volts())
                + " V"
                + (full > supply.ceilingMilliamps()
                        ? ", the ceiling; all at full would take " + full + " mA and is dimmed to it"
                        : ", all of it at full"));
        found.dimmerSupply().ifPresent(lights -> {
            int all = found.dimmers().stream()
                    .filter(use -> use.what() != Findings.Hanging.NOTHING)
                    .mapToInt(Findings.DimmerUse::fullMilliamps)
                    .sum();
            draw.add("the lights on dimmers: " + Math.min(all, lights.ceilingMilliamps()) + " mA at "
                    + TypedNumbers.shown(lights.volts()) + " V");
        });
        return draw;
    }

    private List<String> uncertain() {
        List<String> uncertain = new ArrayList<>();
        String printer = found.printer().orElse("");
        if (printer.contains(PrinterStep.STAND_IN)) {
            uncertain.add(
                    "It is not known where the printer reports what, so the lights cannot follow it yet. Run 'lampwright fit "
                            + file + "' and listen while it heats up and prints.");
        } else if (!faults) {
            uncertain.add(
                    "Nothing is bound to a fault, so a fault will never be shown. Add the printer's words as fault ="
                            + " [...] in [printer.state].");
        } else if (FAULT_GUESSED.matcher(printer).find()) {
            uncertain.add("The words for a fault are guessed, not heard. Compare them with the printer's manual.");
        }
        Findings.Supply supply = found.supply().orElseThrow();
        if (supply.amps().isEmpty()) {
            uncertain.add("The strip's supply is not known, so the ceiling is what a USB port gives.");
        } else if (supply.fuseAmps().isEmpty()) {
            uncertain.add("The strip has no known fuse. Fit one close to the supply.");
        }
        if (found.currents().isEmpty()) {
            uncertain.add(
                    "The currents are not measured: 20 mA a channel is assumed, which is more than most strips take.");
        }
        if (found.strip().orElseThrow().goesOn()) {
            uncertain.add("The strip is longer than what is driven; the rest stays dark.");
        }
        return uncertain;
    }
}
