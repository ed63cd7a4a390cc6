package dev.lampwright.engine;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;

/** Configurations for chains. */
public final class Configs {
    private Configs() {}

    /** A strip well below its ceiling, plus lines of the file, or, after a comma, more keys of the strip. */
    public static Config of(int pixels, String order, String more) {
        boolean ofStrip = more.startsWith(",");
        String text = """
                broker.url = "mqtt://alder"
                printer.readings.job.progress.topic = "shop/alder/job"
                controller.port = "/dev/ttyACM0"
                supply.ceiling_mA = 65535
                """;
        String strip = "strip = { pixels = " + pixels + ", order = \"" + order + '"' + (ofStrip ? more : "") + " }\n";
        try {
            return ConfigFile.read(text + strip + (ofStrip ? "" : more), "t.toml");
        } catch (ConfigException e) {
            throw new AssertionError(e);
        }
    }

    /** Additional lines of the file. */
    static Config lines(String lines) {
        String text = """
                broker.url = "mqtt://alder"
                printer.readings.job.progress.topic = "shop/alder/job"
                controller.port = "/dev/ttyACM0"
                """;
        try {
            return ConfigFile.read(text + lines, "t.toml");
        } catch (ConfigException e) {
            throw new AssertionError(e);
        }
    }
}
