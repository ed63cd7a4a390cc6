package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The lights that pictures are drawn on when no configuration is given: {@code render.toml}. */
final class StandInLights {
    private static final String PIXELS = "pixels = 60\n";

    private StandInLights() {}

    /** A strip of 60 pixels and a white light. */
    static Config usual() throws ConfigException {
        return read(text());
    }

    /** No lights except the strip. */
    static Config bare() throws ConfigException {
        return read(text().substring(0, text().indexOf("[dimmers]")));
    }

    /** The same as {@link #usual} with a different number of pixels. */
    static Config of(int pixels) throws ConfigException {
        return read(text().replace(PIXELS, "pixels = " + pixels + "\n"));
    }

    private static Config read(String text) throws ConfigException {
        return ConfigFile.read(text, "render.toml");
    }

    private static String text() {
        try (InputStream in = StandInLights.class.getResourceAsStream("render.toml")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
