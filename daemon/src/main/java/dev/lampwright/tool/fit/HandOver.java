package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
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
     * @return phrases for the user
     */
    static List<Phrase> lines(Findings found, boolean faults, Path file) {
        HandOver over = new HandOver(found, faults, file);
        List<Phrase> lines = new ArrayList<>();
        lines.add(Phrase.of("over_fitted", "Fitted:"));
        lines.addAll(over.fitted());
        lines.add(Phrase.of("over_draws", "It may draw:"));
        lines.addAll(over.draw());
        List<Phrase> uncertain = over.uncertain();
        if (!uncertain.isEmpty()) {
            lines.add(Phrase.of("over_uncertain", "Uncertain:"));
            lines.addAll(uncertain);
        }
        lines.add(Phrase.plain(""));
        return lines;
    }

    private static Phrase item(String code, String english, Object... values) {
        return Phrase.of(code, "  - " + english, values);
    }

    private List<Phrase> fitted() {
        List<Phrase> fitted = new ArrayList<>();
        String port = found.board().orElseThrow().port();
        fitted.add(item(
                "over_strip",
                found.knownPixels() + " pixels, order " + found.knownOrder() + ", at " + port,
                "pixels",
                found.knownPixels(),
                "order",
                found.knownOrder(),
                "port",
                port));
        found.zones()
                .forEach((name, run) -> fitted.add(item(
                        "over_zone",
                        "zone " + name + ": pixels " + run,
                        "name",
                        name,
                        "from",
                        run.first(),
                        "to",
                        run.last())));
        for (DimmerLights.Entry light :
                DimmerLights.of(found.dimmers(), found.zones().keySet())) {
            String channels = light.channels().stream().map(Object::toString).collect(Collectors.joining(", "));
            fitted.add(item(
                    "over_light",
                    "light " + light.name() + ": dimmer " + channels,
                    "name",
                    light.name(),
                    "dimmers",
                    channels));
        }
        return fitted;
    }

    private List<Phrase> draw() {
        List<Phrase> draw = new ArrayList<>();
        Findings.Supply supply = found.supply().orElseThrow();
        Setup setup = FittingSetups.of(found);
        long full = Math.round(setup.pixels()
                * (setup.darkMicroamps()
                        + (double) setup.channelMicroamps().stream()
                                .mapToInt(Integer::intValue)
                                .sum())
                / MICRO);
        boolean held = full > supply.ceilingMilliamps();
        draw.add(item(
                held ? "over_draw_held" : "over_draw",
                "the strip: " + Math.min(full, supply.ceilingMilliamps()) + " mA at "
                        + TypedNumbers.shown(supply.volts())
                        + " V"
                        + (held
                                ? ", the ceiling; all at full would take " + full + " mA and is dimmed to it"
                                : ", all of it at full"),
                "draw",
                Math.min(full, supply.ceilingMilliamps()),
                "volts",
                supply.volts(),
                "full",
                full));
        found.dimmerSupply().ifPresent(lights -> {
            int all = found.dimmers().stream()
                    .filter(use -> use.what() != Findings.Hanging.NOTHING)
                    .mapToInt(Findings.DimmerUse::fullMilliamps)
                    .sum();
            int most = Math.min(all, lights.ceilingMilliamps());
            draw.add(item(
                    "over_draw_lights",
                    "the lights on dimmers: " + most + " mA at " + TypedNumbers.shown(lights.volts()) + " V",
                    "draw",
                    most,
                    "volts",
                    lights.volts()));
        });
        return draw;
    }

    private List<Phrase> uncertain() {
        List<Phrase> uncertain = new ArrayList<>();
        String printer = found.printer().orElse("");
        if (printer.contains(PrinterStep.STAND_IN)) {
            uncertain.add(item(
                    "over_no_printer",
                    "It is not known where the printer reports what, so the lights cannot follow it yet. Run 'lampwright fit "
                            + file + "' and listen while it heats up and prints."));
        } else if (!faults) {
            uncertain.add(item(
                    "over_no_fault",
                    "Nothing is bound to a fault, so a fault will never be shown. Add the printer's words as fault ="
                            + " [...] in [printer.state]."));
        } else if (FAULT_GUESSED.matcher(printer).find()) {
            uncertain.add(item(
                    "over_fault_guessed",
                    "The words for a fault are guessed, not heard. Compare them with the printer's manual."));
        }
        Findings.Supply supply = found.supply().orElseThrow();
        if (supply.amps().isEmpty()) {
            uncertain.add(item(
                    "over_no_supply", "The strip's supply is not known, so the ceiling is what a USB port gives."));
        } else if (supply.fuseAmps().isEmpty()) {
            uncertain.add(item("over_no_fuse", "The strip has no known fuse. Fit one close to the supply."));
        }
        if (found.currents().isEmpty()) {
            uncertain.add(item(
                    "over_unmeasured",
                    "The currents are not measured: 20 mA a channel is assumed, which is more than most strips take."));
        }
        if (found.strip().orElseThrow().goesOn()) {
            uncertain.add(item("over_goes_on", "The strip is longer than what is driven; the rest stays dark."));
        }
        return uncertain;
    }
}
