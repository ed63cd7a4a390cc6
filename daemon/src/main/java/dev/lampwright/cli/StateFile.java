package dev.lampwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.CRC32;

/**
 * Where a daemon keeps what must outlast it: in the first folder of {@code STATE_DIRECTORY}, which a service manager sets
 * (systemd.exec(5)), or else in the user's state folder by the XDG Base Directory Specification 0.8, {@code XDG_STATE_HOME} or
 * {@code ~/.local/state}. Each configuration file has its own file there.
 */
final class StateFile {
    private static final String OURS = "lampwright";

    /** The suffix of the file for asks. */
    static final String ASKS = ".asks.json";
    /** The suffix of the file for the history. */
    static final String HISTORY = ".history.jsonl";

    /** How the name of the file ends that has looks and cues which the page saved. */
    static final String LOOKS = ".looks.toml";

    /** The folder that systemd creates for the package's {@code StateDirectory=}. */
    static final Path OF_THE_SERVICE = Path.of("/var/lib/lampwright");

    private static final int LONGEST_NAME = 100;

    private StateFile() {}

    /**
     * The file for a configuration.
     *
     * @param config path of the configuration file
     * @param environment the process's
     * @param home the user's home folder
     * @param suffix what is kept: {@link #ASKS}, {@link #HISTORY} or {@link #LOOKS}
     * @return for example {@code /var/lib/lampwright/alder-1f04c3a9.asks.json}, with digits derived from the configuration's absolute path
     */
    static Path of(Path config, Map<String, String> environment, Path home, String suffix) {
        return folder(environment, home).resolve(name(config, suffix));
    }

    /**
     * Where a daemon may have kept the history of a configuration: a daemon that this user started, or the service.
     *
     * @param config path of the configuration file
     * @param environment the process's
     * @param home the user's home folder
     * @return the possible files
     */
    static List<Path> histories(Path config, Map<String, String> environment, Path home) {
        return all(config, environment, home, HISTORY);
    }

    /**
     * Where a daemon may have saved looks of a configuration: one that this user started, or the service.
     *
     * @param config path of the configuration file
     * @param environment the process's
     * @param home the user's home folder
     * @return the files that there may be
     */
    static List<Path> looks(Path config, Map<String, String> environment, Path home) {
        return all(config, environment, home, LOOKS);
    }

    private static List<Path> all(Path config, Map<String, String> environment, Path home, String suffix) {
        return Stream.of(folder(environment, home), OF_THE_SERVICE)
                .distinct()
                .map(folder -> folder.resolve(name(config, suffix)))
                .toList();
    }

    /**
     * Whether a service manager provides a folder for what must outlast the process.
     *
     * @param environment the process's
     */
    static boolean isGiven(Map<String, String> environment) {
        return !given(environment).isEmpty();
    }

    /** The folder that a service manager provides for what must outlast the process; empty if it provides none. */
    static Optional<Path> folder(Map<String, String> environment) {
        return Optional.of(given(environment))
                .filter(folder -> !folder.isEmpty())
                .map(Path::of);
    }

    private static String given(Map<String, String> environment) {
        return environment.getOrDefault("STATE_DIRECTORY", "").split(":", -1)[0];
    }

    private static String name(Path config, String suffix) {
        Path whole = config.toAbsolutePath().normalize();
        CRC32 sum = new CRC32();
        sum.update(whole.toString().getBytes(StandardCharsets.UTF_8));
        String name = whole.getFileName().toString().replaceFirst("\\.toml$", "");
        String beginning = name.substring(0, Math.min(LONGEST_NAME, name.length()));
        return "%s-%08x%s".formatted(beginning, sum.getValue(), suffix);
    }

    private static Path folder(Map<String, String> environment, Path home) {
        String ours = given(environment);
        if (!ours.isEmpty()) {
            return Path.of(ours);
        }
        String state = environment.getOrDefault("XDG_STATE_HOME", "");
        boolean absolute = !state.isEmpty() && Path.of(state).isAbsolute();
        return (absolute ? Path.of(state) : home.resolve(".local").resolve("state")).resolve(OURS);
    }
}
