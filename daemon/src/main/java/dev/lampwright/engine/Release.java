package dev.lampwright.engine;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The build. */
public final class Release {
    private Release() {}

    /**
     * The version of this build.
     *
     * @return as named by the build
     */
    public static String version() {
        Properties properties = new Properties();
        try (InputStream in = Release.class.getResourceAsStream("version.properties")) {
            properties.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return properties.getProperty("version");
    }
}
