package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.Swatch;
import dev.lampwright.config.Swatches;
import dev.lampwright.demo.ColourDepth;
import dev.lampwright.demo.StripPicture;
import dev.lampwright.look.Level;
import dev.lampwright.look.LookSpec;
import dev.lampwright.signal.Signal;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Looks as lines of text, with pictures if the terminal shows colours and is wide enough. */
final class LookBook {
    /** Columns that a picture needs, in addition to the name. */
    static final int PICTURE_COLUMNS = 48;

    private static final int NAME_COLUMNS = 18;
    private static final String MARGIN = "  ";
    /** Minimum columns for a picture. */
    static final int LEAST_COLUMNS = MARGIN.length() + NAME_COLUMNS + PICTURE_COLUMNS;

    private static final int ROWS = 12;
    private static final int MOST_TEXT_COLUMNS = 100;
    private static final Map<String, String> HEADINGS = Map.of(
            "calm", "calm, at any time",
            "work", "light to work by",
            "heat", "follow the heat-up",
            "progress", "follow the job",
            "held", "the job waits",
            "done", "the job is done",
            "fault", "something is wrong",
            "standby", "nothing happens",
            "night", "night");

    private final Config drawnOn;
    private final Config lights;
    private final ColourDepth depth;
    private final int columns;

    /**
     * Creates one.
     *
     * @param drawnOn lights of {@link #PICTURE_COLUMNS} pixels
     * @param lights the lights for the looks
     * @param depth colours of the terminal
     * @param columns width of the terminal
     */
    LookBook(Config drawnOn, Config lights, ColourDepth depth, int columns) {
        this.drawnOn = drawnOn;
        this.lights = lights;
        this.depth = columns < LEAST_COLUMNS ? ColourDepth.PLAIN : depth;
        this.columns = Math.min(columns, MOST_TEXT_COLUMNS);
    }

    /** The heading of a use above a list. */
    static String heading(String use) {
        return HEADINGS.get(use);
    }

    /** All swatches, by use. */
    List<String> list() throws IOException {
        List<String> lines = new ArrayList<>();
        String use = "";
        for (String name : Swatches.names()) {
            Swatch swatch = Swatches.named(name);
            if (!swatch.use().equals(use)) {
                use = swatch.use();
                lines.add("");
                lines.add(heading(use));
            }
            lines.addAll(entry(swatch));
        }
        lines.add("");
        lines.addAll(wrapped(
                "",
                "lampwright looks NAME shows one of them, and with --toml prints it, to copy and change. In a file: look ="
                        + " \"NAME\" in a cue, or swatch = \"NAME\" in a look."));
        return lines.subList(1, lines.size());
    }

    private List<String> entry(Swatch swatch) throws IOException {
        String name = MARGIN + ("%-" + NAME_COLUMNS + "s").formatted(swatch.name());
        if (depth == ColourDepth.PLAIN) {
            return hanging(name, swatch.sentence());
        }
        List<String> lines = new ArrayList<>();
        byte[] strip = LookSample.of(drawnOn, look(swatch.name()), 2).strips().get(0);
        lines.add(name + picture().of(strip));
        lines.addAll(wrapped(MARGIN, swatch.sentence()));
        return lines;
    }

    /** One swatch, with time down its picture. */
    List<String> page(Swatch swatch) throws IOException {
        List<String> lines = new ArrayList<>(wrapped("", swatch.name() + ": " + swatch.sentence()));
        LookSpec look = look(swatch.name());
        LookSample sample = LookSample.of(drawnOn, look, ROWS);
        if (depth != ColourDepth.PLAIN) {
            lines.add("");
            for (int row = 0; row < ROWS; row++) {
                lines.add("%3d s ".formatted(row + 1)
                        + picture().of(sample.strips().get(row)));
            }
        }
        lines.add("");
        lines.addAll(wrapped("", facts(look, sample)));
        lines.addAll(wrapped("", "Try it: lampwright tell --config FILE look " + swatch.name()));
        lines.addAll(wrapped("", "Copy to change: lampwright looks " + swatch.name() + " --toml"));
        return lines;
    }

    private String facts(LookSpec look, LookSample sample) {
        String follows = look.signals().stream().map(Signal::key).collect(Collectors.joining(" and "));
        String share = String.format(Locale.ROOT, "%.0f %%", Math.max(1, 100 * sample.share()));
        boolean lit = !look.dimmers().stream().allMatch(Level.fixed(0)::equals);
        return "It takes about " + share + " of the strip's full current"
                + (follows.isEmpty() ? "" : ", follows " + follows)
                + (lit ? ", and lights the white light work" : "") + ".";
    }

    /** The text of a swatch, with the keys for lights that are not fitted as comments. */
    List<String> toml(Swatch swatch) {
        boolean white = lights.fitting().dimmers().stream()
                .anyMatch(use -> use.isWhite() && use.name().equals("work"));
        boolean plain = lights.fitting().zones().containsKey("plain");
        return swatch.toml()
                .lines()
                .map(line -> line.startsWith("dimmers =") && !white
                        ? "# " + line + "   # for a white light called work"
                        : line)
                .map(line -> line.contains("zone = \"plain\"") && !plain
                        ? "  # " + line.strip() + "   # for a plain colour strip"
                        : line)
                .toList();
    }

    private LookSpec look(String name) {
        return drawnOn.light().look(name).orElseThrow();
    }

    private StripPicture picture() {
        return new StripPicture(drawnOn.setup().order(), depth);
    }

    private List<String> wrapped(String margin, String text) {
        return hanging(margin, margin, text);
    }

    private List<String> hanging(String first, String text) {
        return hanging(first, " ".repeat(first.length()), text);
    }

    private List<String> hanging(String first, String margin, String text) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : text.split(" ", -1)) {
            if (!empty && line.length() + 1 + word.length() > columns) {
                lines.add(line.toString());
                line = new StringBuilder(margin);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
        return lines;
    }
}
