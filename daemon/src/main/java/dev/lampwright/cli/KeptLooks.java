package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.config.Overlays;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The looks and cues that the live page saved in the folder for state, where it may not write the configuration file itself. */
final class KeptLooks {
    private static final Logger LOG = LoggerFactory.getLogger(KeptLooks.class);

    /** For the daemon, which runs without looks that do not fit its file any more, and says so. */
    static final Overlays OF_THIS_DAEMON = new Overlays() {
        @Override
        public Optional<Path> of(Path config) {
            return Optional.of(path(config));
        }

        @Override
        public boolean leavesOut(Path overlay, List<Mistake> why) {
            why.forEach(mistake -> LOG.warn("{}", mistake));
            LOG.warn("{} is left out until it is fixed", overlay);
            return true;
        }
    };

    /** For {@code check}, which reads what this user's daemon or the service has saved, and counts what is wrong there as a mistake. */
    static final Overlays OF_ANY_DAEMON = ofAnyDaemon((overlay, why) -> false);

    private KeptLooks() {}

    /** Whether looks that are not right are left out. */
    private interface Choice {
        boolean leavesOut(Path overlay, List<Mistake> why);
    }

    private static Overlays ofAnyDaemon(Choice choice) {
        return new Overlays() {
            @Override
            public Optional<Path> of(Path config) {
                return StateFile.looks(config, System.getenv(), home()).stream()
                        .filter(Files::exists)
                        .findFirst();
            }

            @Override
            public boolean leavesOut(Path overlay, List<Mistake> why) {
                return choice.leavesOut(overlay, why);
            }
        };
    }

    /**
     * Reads a configuration for a command, as the daemon does: with what it has saved, and without that if it does not fit any more.
     *
     * @param config path of the configuration file
     * @param err receives what is left out, and why
     */
    static Examined examine(Path config, PrintWriter err) throws ConfigException {
        return ConfigFile.examine(config, ofAnyDaemon((overlay, why) -> {
            why.forEach(mistake -> err.println("warning: " + mistake));
            err.println("warning: " + overlay + " is left out until it is fixed");
            return true;
        }));
    }

    /**
     * Reads a configuration as {@link #examine} does, for a command that draws looks: says which of them are from another file.
     *
     * @param config path of the configuration file
     * @param err receives that too
     */
    static Config readToDraw(Path config, PrintWriter err) throws ConfigException {
        Examined examined = examine(config, err);
        words(examined).forEach(line -> err.println(config + ": " + line));
        return examined.config();
    }

    /** What a configuration takes from looks that are kept apart from it, in a few words for each file. */
    static List<String> words(Examined examined) {
        return examined.keptApart().entrySet().stream()
                .map(entry -> entry.getValue().stream()
                                .map(path -> path.size() == 1 ? "the cues" : path.get(1))
                                .collect(Collectors.joining(", "))
                        + " from " + entry.getKey())
                .toList();
    }

    /** The file of the daemon that this process runs. */
    static Path path(Path config) {
        return StateFile.of(config, System.getenv(), home(), StateFile.LOOKS);
    }

    /** Reads a configuration for the daemon. */
    static Config read(Path config) throws ConfigException {
        return ConfigFile.examine(config, OF_THIS_DAEMON).config();
    }

    private static Path home() {
        return Path.of(System.getProperty("user.home"));
    }
}
