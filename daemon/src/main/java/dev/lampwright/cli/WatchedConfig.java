package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A configuration file and the active configuration. Whatever happens to the file, a valid configuration stays active. For one thread at a
 * time.
 */
final class WatchedConfig {
    private static final Logger LOG = LoggerFactory.getLogger(WatchedConfig.class);
    private static final String STAYS = "the current configuration stays active";

    private final Path file;
    private final Reader reader;
    private final FileWatch watch;
    private final Optional<FileWatch> looks;
    private Config inForce;
    private boolean isMissing;

    /** Reads a file. */
    interface Reader {
        Config read(Path file) throws ConfigException;
    }

    /**
     * Reads the file. It is watched from just before, so that no change is missed however long it takes until the first call of
     * {@link #changed}.
     *
     * @param file its path
     * @param reader how to read it
     * @throws ConfigException if it cannot be read or is not valid
     */
    WatchedConfig(Path file, Reader reader) throws ConfigException {
        this(file, Optional.empty(), reader);
    }

    /**
     * Reads the file, and is to read it again when another changes that is read with it.
     *
     * @param file its path
     * @param looks the other's, which may come and go
     * @param reader how to read both
     * @throws ConfigException if they cannot be read or are not right
     */
    WatchedConfig(Path file, Path looks, Reader reader) throws ConfigException {
        this(file, Optional.of(FileWatch.ofOptional(looks)), reader);
    }

    private WatchedConfig(Path file, Optional<FileWatch> looks, Reader reader) throws ConfigException {
        this.file = file;
        this.reader = reader;
        this.looks = looks;
        watch = new FileWatch(file);
        inForce = reader.read(file);
    }

    /** The newest configuration that was accepted. */
    Config inForce() {
        return inForce;
    }

    /** Whether the file has changed and settled; true once for each change. */
    boolean changed() {
        boolean others = looks.map(FileWatch::changed).orElse(false);
        boolean changed = watch.changed() || others;
        Optional<String> why = watch.missing();
        if (why.isPresent() && !isMissing) {
            LOG.warn("{}: {}; {} until the file can be read again", file, why.get(), STAYS);
        } else if (why.isEmpty() && isMissing) {
            LOG.info("{}: the file can be read again", file);
        }
        isMissing = why.isPresent();
        return changed;
    }

    /**
     * Reads the file again and applies it. If it is not valid, or lampwright itself fails to apply it, the log says so and the active
     * configuration stays.
     *
     * @param taker applies a configuration; if that fails, it receives the previous one
     */
    void readAgain(Consumer<Config> taker) {
        try {
            takeUp(reader.read(file), taker);
        } catch (ConfigException e) {
            e.mistakes().forEach(mistake -> LOG.warn("{}", mistake));
            LOG.warn("{} is rejected; {}", file, STAYS);
        } catch (RuntimeException | StackOverflowError e) {
            tell(e, STAYS);
        }
    }

    private void takeUp(Config next, Consumer<Config> taker) {
        try {
            taker.accept(next);
            inForce = next;
            LOG.info("{} has been read again and is active", file);
        } catch (RuntimeException | StackOverflowError e) {
            tell(e, goesBack(taker) ? STAYS : "start lampwright again");
        }
    }

    private boolean goesBack(Consumer<Config> taker) {
        try {
            taker.accept(inForce);
            return true;
        } catch (RuntimeException | StackOverflowError e) {
            LOG.debug("{}", file, e);
            return false;
        }
    }

    private void tell(Throwable failure, String outcome) {
        LOG.debug("{}", file, failure);
        LOG.error("{} hit an internal error, please report it ({}); {}", file, failure.toString(), outcome);
    }
}
