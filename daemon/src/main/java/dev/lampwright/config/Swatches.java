package dev.lampwright.config;

import dev.lampwright.look.Fitting;
import dev.lampwright.look.LookSpec;
import dev.lampwright.toml.Toml;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The swatch book: ready-made looks that come with Lampwright, each in its own file, written as in a configuration. A file starts with a
 * comment, {@code # USE: SENTENCE}. Nothing is read until it is named, so those that nobody uses cost nothing.
 */
public final class Swatches {
    private static final Set<String> NAMES = Collections.unmodifiableSet(new LinkedHashSet<>(List.of(
            "porch-lamp",
            "linen",
            "copper-kettle",
            "banked-stove",
            "sea-mist",
            "moss-bank",
            "plum-jam",
            "wet-slate",
            "drawing-board",
            "window-seat",
            "toast",
            "jam-pan",
            "honey-jar",
            "measuring-stick",
            "long-day",
            "tea-break",
            "ripe-pears",
            "cooling-rack",
            "red-lantern",
            "tripped-fuse",
            "hall-light",
            "sleeping-cat",
            "night-shift",
            "moonlit-yard")));

    private static final String COMMENT = "# ";

    private Swatches() {}

    /**
     * The names of all swatches.
     *
     * @return in the order of the book, grouped by use
     */
    public static Set<String> names() {
        return NAMES;
    }

    /**
     * A swatch.
     *
     * @param name one of {@link #names}
     * @return the swatch
     * @throws IllegalArgumentException if there is none with that name
     */
    public static Swatch named(String name) {
        if (!NAMES.contains(name)) {
            throw new IllegalArgumentException("there is no swatch " + name);
        }
        String text = text(name);
        int colon = text.indexOf(": ");
        int end = text.indexOf('\n');
        return new Swatch(name, text.substring(COMMENT.length(), colon), text.substring(colon + 2, end), text);
    }

    /**
     * Whether a swatch flashes.
     *
     * @param name one of {@link #names}
     * @param fitting the lights that it would be on
     * @return as in {@link LookSpec#flashes}
     */
    public static boolean flashes(String name, Fitting fitting) {
        return read(name, fitting).flashes();
    }

    /**
     * The look of a swatch on given lights.
     *
     * @param name any name, of a swatch or not
     * @param fitting what is fitted
     * @return the look; empty if there is no swatch with that name
     */
    static Optional<LookSpec> look(String name, Fitting fitting) {
        return NAMES.contains(name) ? Optional.of(read(name, fitting)) : Optional.empty();
    }

    private static LookSpec read(String name, Fitting fitting) {
        try {
            Table root = new Mistakes(name + ".toml", Toml.read(text(name))).root();
            LookSpec look =
                    LooksSection.ofLampwright(fitting).read(root.table("looks")).get(name);
            root.requireRight();
            return look;
        } catch (ConfigException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String text(String name) {
        try (InputStream file = Swatches.class.getResourceAsStream("swatches/" + name + ".toml")) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
