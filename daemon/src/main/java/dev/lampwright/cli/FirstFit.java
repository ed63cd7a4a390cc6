package dev.lampwright.cli;

import dev.lampwright.config.PageSettings;
import dev.lampwright.page.FirstPage;
import dev.lampwright.page.FirstToken;
import dev.lampwright.service.ServiceWatch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Runs until a configuration exists: offers the guided fitting on the page, to browsers on this computer, and to those on other computers that
 * have the token in the folder for state.
 */
final class FirstFit {
    private static final Logger LOG = LoggerFactory.getLogger(FirstFit.class);
    private static final long LOOK_EVERY_MS = 500;
    /** For how many looks the end of the fitting stays on the page if nobody asks for it. */
    private static final long LAST_LOOKS = 10;
    /** For how many it stays once somebody has asked: the answer may still be on its way. */
    private static final long SEEN_LOOKS = 2;

    private final Path file;
    private final int port;
    private final Map<String, String> environment;

    /**
     * Prepares.
     *
     * @param file the configuration that does not exist yet
     * @param port of the page
     * @param environment the process's
     */
    FirstFit(Path file, int port, Map<String, String> environment) {
        this.file = file;
        this.port = port;
        this.environment = environment;
    }

    /**
     * The file to run: the given one if it exists, or else the one that the page has written or is to write where the service may write.
     *
     * @param given a configuration file
     * @param environment the process's
     */
    static Path file(Path given, Map<String, String> environment) {
        return Files.exists(given)
                ? given
                : StateFile.folder(environment)
                        .map(folder -> folder.resolve(given.getFileName()))
                        .orElse(given);
    }

    /**
     * The token for other computers. Only a service manager's folder for state has one: whoever starts this by hand has a terminal to fit in.
     *
     * @param environment the process's
     * @param port of the page
     * @return none if it cannot be kept; the log says why
     */
    static Optional<FirstToken> token(Map<String, String> environment, int port) {
        Optional<Path> folder = StateFile.folder(environment);
        try {
            return folder.isEmpty() ? Optional.empty() : Optional.of(FirstToken.make(folder.get(), port));
        } catch (IOException e) {
            LOG.warn("the fitting is for browsers on this computer alone: {}", e.getMessage());
            return Optional.empty();
        }
    }

    /**
     * Deletes the token of the first fitting. It opens no page that has a configuration.
     *
     * @param environment the process's
     */
    static void forgetToken(Map<String, String> environment) {
        try {
            Optional<Path> folder = StateFile.folder(environment);
            if (folder.isPresent()) {
                FirstToken.forget(folder.get());
            }
        } catch (IOException e) {
            LOG.warn(
                    "the token of the first fitting, which opens nothing any more, cannot be deleted: {}",
                    e.getMessage());
        }
    }

    /**
     * Runs.
     *
     * @param stopped counts down when the process is to end
     * @return whether there is a configuration now; false if the process is to end
     */
    boolean run(CountDownLatch stopped) throws InterruptedException {
        AtomicLong pulse = new AtomicLong();
        PageFitter fitter =
                PageFitter.first(file, port == PageSettings.USUAL_PORT ? OptionalInt.empty() : OptionalInt.of(port));
        Optional<FirstToken> token = token(environment, port);
        try (FirstPage page = new FirstPage(port, token, fitter);
                ServiceWatch service = ServiceWatch.of(
                        environment,
                        pulse::incrementAndGet,
                        () -> "no configuration yet: fit the lights on the page"
                                + (token.isPresent() ? "; sudo lampwright page prints its code" : ""))) {
            service.start();
            long looks = 0;
            long seen = 0;
            while (!stopped.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
                page.lookAround();
                boolean ready = Files.exists(file) && !fitter.isRunning();
                looks = ready ? looks + 1 : 0;
                seen = ready && fitter.isEndSeen() ? seen + 1 : 0;
                if (seen >= SEEN_LOOKS || looks > LAST_LOOKS) {
                    service.leave();
                    return true;
                }
            }
        }
        return false;
    }
}
