package dev.lampwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * Where a daemon keeps what is to outlast it: in the first folder of {@code STATE_DIRECTORY}, which a service manager sets (systemd.exec(5)),
 * else in that of the user's state by the XDG Base Directory Specification 0.8, {@code XDG_STATE_HOME} or {@code ~/.local/state}. Each
 * configuration file has a file of its own there.
 */
final class StateFile {
    private static final String OURS = "lampwright";
    private static final String SUFFIX = ".asks.json";
    private static final int LONGEST_NAME = 100;

    private StateFile() {}

    /**
     * The file for a configuration.
     *
     * @param config path of the configuration file
     * @param environment the process's
     * @param home the user's home folder
     * @return for instance {@code /var/lib/lampwright/alder-1f04c3a9.asks.json}, the digits from the configuration's whole path
     */
    static Path of(Path config, Map<String, String> environment, Path home) {
        Path whole = config.toAbsolutePath().normalize();
        CRC32 sum = new CRC32();
        sum.update(whole.toString().getBytes(StandardCharsets.UTF_8));
        String name = whole.getFileName().toString().replaceFirst("\\.toml$", "");
        String beginning = name.substring(0, Math.min(LONGEST_NAME, name.length()));
        return folder(environment, home).resolve("%s-%08x%s".formatted(beginning, sum.getValue(), SUFFIX));
    }

    private static Path folder(Map<String, String> environment, Path home) {
        String ours = environment.getOrDefault("STATE_DIRECTORY", "").split(":", -1)[0];
        if (!ours.isEmpty()) {
            return Path.of(ours);
        }
        String state = environment.getOrDefault("XDG_STATE_HOME", "");
        boolean absolute = !state.isEmpty() && Path.of(state).isAbsolute();
        return (absolute ? Path.of(state) : home.resolve(".local").resolve("state")).resolve(OURS);
    }
}
