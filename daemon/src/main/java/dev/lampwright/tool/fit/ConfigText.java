package dev.lampwright.tool.fit;

import dev.lampwright.board.BoardKind;
import dev.lampwright.toml.TomlText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The configuration of what was found, as commented TOML. */
final class ConfigText {
    private static final int COMMENT_AT = 40;

    private final StringBuilder text = new StringBuilder();
    private final Findings found;

    private ConfigText(Findings found) {
        this.found = found;
    }

    /**
     * Writes findings.
     *
     * @param found all of them, except those that may stay open
     * @param file where it will be; the daemon's own topics are named after it
     * @param page what is known of the live page, if there is to be one
     * @return a file that passes {@code check}
     */
    static String of(Findings found, Path file, NewPage page) {
        ConfigText config = new ConfigText(found);
        config.line("# Written by lampwright fit. TOML 1.0; numbers carry their unit in the key.");
        config.line("# Keys that are not here have their defaults; 'lampwright check' lists them.");
        config.line("");
        config.text.append(found.printer().orElseThrow());
        config.controller();
        config.supply();
        config.strip();
        config.zones();
        config.dimmers();
        config.desk(file);
        config.page(file, page);
        config.wiring();
        return config.text.toString();
    }

    private void controller() {
        Findings.Board board = found.board().orElseThrow();
        line("");
        line("[controller]");
        line("port = " + TomlText.quoted(board.port()));
        line("baud = " + board.baud(), "as in the firmware");
        BoardKind.of(board.here())
                .ifPresent(kind -> line("board = " + TomlText.quoted(kind.name().toLowerCase(Locale.ROOT))));
    }

    private void supply() {
        Findings.Supply supply = found.supply().orElseThrow();
        line("");
        line("[supply]", "what feeds the strip");
        line("volts = " + decimal(supply.volts()));
        line(
                "ceiling_mA = " + supply.ceilingMilliamps(),
                supply.amps().isEmpty()
                        ? "what a USB 2.0 port gives without the board's share: the supply was not given"
                        : "the most that it and its wiring may be asked for");
    }

    private void strip() {
        Findings.Strip strip = found.strip().orElseThrow();
        line("");
        line("[strip]");
        line("pixels = " + strip.pixels(), strip.goesOn() ? "the strip is longer, but the rest is not driven" : "");
        line("order = " + TomlText.quoted(found.knownOrder()));
        found.mount().ifPresent(this::mount);
        Optional<Findings.Currents> currents = found.currents();
        if (currents.isEmpty()) {
            line("channel_mA = " + FittingSetups.USUAL_CHANNEL / 1000, "not measured: most strips take less");
            line("idle_mA = 1");
        } else {
            line("# Measured, rounded up to a tenth; after it the value and its standard error.");
            line(
                    "channel_mA = [" + joined(currents.get(), each -> decimal(TypedNumbers.upToTenth(each.value())))
                            + "]",
                    joined(currents.get(), Findings.Milliamps::toString));
            line(
                    "idle_mA = "
                            + decimal(
                                    TypedNumbers.upToTenth(currents.get().idle().value())),
                    currents.get().idle().toString());
        }
    }

    private void mount(Findings.Mount mount) {
        line("shape = " + TomlText.quoted(mount.shape()));
        if (mount.shape().equals("frame")) {
            line("sides_px = " + mount.sides());
            line("begins = " + TomlText.quoted(mount.begins()));
        }
        if (!mount.shape().equals("straight")) {
            line("clockwise = " + mount.clockwise());
        }
    }

    private void page(Path file, NewPage page) {
        if (found.page()) {
            line("");
            line("[page]", "the live page, for browsers on this computer" + (page.forOthers() ? " and others" : ""));
            page.port().ifPresent(port -> line("port = " + port));
            if (page.forOthers()) {
                tokens(new GivenFiles(file));
            }
        }
    }

    private void tokens(GivenFiles given) {
        line("address = \"0.0.0.0\"");
        line("token_file = " + TomlText.quoted(given.pageToken().toString()));
        line("edit_token_file = " + TomlText.quoted(given.editToken().toString()));
    }

    private void zones() {
        if (!found.zones().isEmpty()) {
            line("");
            line("[zones]", "pixel 0 is nearest the controller; backwards runs towards it");
            found.zones().forEach((name, run) -> line(name + " = " + TomlText.quoted(run.toString())));
        }
    }

    private void dimmers() {
        if (found.dimmers().isEmpty()) {
            return;
        }
        Findings.Supply supply = found.dimmerSupply().orElseThrow();
        boolean own = supply.volts() != found.supply().orElseThrow().volts();
        String fed = ", volts = " + decimal(supply.volts());
        String ceiling = own ? ", ceiling_mA = " + supply.ceilingMilliamps() : "";
        line("");
        line("[dimmers]", "plain lights on the controller's dimmers");
        for (DimmerLights.Entry entry :
                DimmerLights.of(found.dimmers(), found.zones().keySet())) {
            line(entry.name() + " = { " + entry.channelsText() + fed + ", full_mA = " + entry.fullMilliamps() + ceiling
                    + " }");
        }
    }

    private void desk(Path file) {
        line("");
        line("[desk]");
        String name = file.getFileName().toString().replaceFirst("\\.toml$", "").replaceAll("[^\\p{L}\\p{N}_-]", "-");
        line(
                "prefix = " + TomlText.quoted("lampwright/" + name),
                "of the topics for asks and status; one for each printer");
        line("brightness = " + decimal(brightness(found)), "share of full light that suits the room");
    }

    /** The brightness that was chosen, to a thousandth; 1 if none was chosen. */
    static double brightness(Findings found) {
        return Math.round(found.brightness().orElse(1) * 1000) / 1000.0;
    }

    private void wiring() {
        Findings.Supply supply = found.supply().orElseThrow();
        List<String> supplies = new ArrayList<>();
        supply.amps()
                .ifPresent(amps -> supplies.add(
                        "strip = { volts = " + decimal(supply.volts()) + ", amps = " + decimal(amps) + " }"));
        found.dimmerSupply()
                .filter(other ->
                        other.volts() != supply.volts() && !found.dimmers().isEmpty())
                .ifPresent(other -> supplies.add("lights = { volts = " + decimal(other.volts()) + ", amps = "
                        + decimal(other.amps().orElseThrow()) + " }"));
        line("");
        line("# For 'lampwright plan'. Add wire, length_m and connector_A: what you leave out is assumed.");
        if (!supplies.isEmpty()) {
            line("[wiring.supplies]");
            supplies.forEach(this::line);
            line("");
        }
        line("[wiring.strip]");
        line("from = " + TomlText.quoted(supply.fromBoard() ? "board" : "supply"));
        supply.fuseAmps().ifPresent(amps -> line("fuse_A = " + decimal(amps)));
    }

    private void line(String line) {
        line(line, "");
    }

    private void line(String line, String comment) {
        String blanks = " ".repeat(Math.max(1, COMMENT_AT - line.length()));
        text.append(line)
                .append(comment.isEmpty() ? "" : blanks + "# " + comment)
                .append('\n');
    }

    private static String joined(Findings.Currents currents, Function<Findings.Milliamps, String> words) {
        return currents.channels().stream().map(words).collect(Collectors.joining(", "));
    }

    private static String decimal(double number) {
        return TypedNumbers.shown(number);
    }
}
