package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Mistake;
import dev.lampwright.config.Overlays;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
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

    /** For commands, which read what this user's daemon or the service has saved, and take what is wrong there for a mistake. */
    static final Overlays OF_ANY_DAEMON = new Overlays() {
        @Override
        public Optional<Path> of(Path config) {
            return StateFile.looks(config, System.getenv(), home()).stream()
                    .filter(Files::exists)
                    .findFirst();
        }

        @Override
        public boolean leavesOut(Path overlay, List<Mistake> why) {
            return false;
        }
    };

    private KeptLooks() {}

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
