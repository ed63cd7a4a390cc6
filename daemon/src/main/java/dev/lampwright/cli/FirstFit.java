package dev.lampwright.cli;

import dev.lampwright.config.PageSettings;
import dev.lampwright.page.FirstPage;
import dev.lampwright.service.ServiceWatch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/** Runs until a configuration exists: offers the guided fitting on the page, to browsers on this computer. */
final class FirstFit {
    private static final long LOOK_EVERY_MS = 500;
    /** How long the end of the fitting stays on the page if nobody has asked for it. */
    private static final long LAST_LOOKS = 10;
    /** And once somebody has: the answer may still be on its way. */
    private static final long SEEN_LOOKS = 2;

    private final Path file;
    private final int port;

    /**
     * Prepares.
     *
     * @param file the configuration that does not exist yet
     * @param port of the page
     */
    FirstFit(Path file, int port) {
        this.file = file;
        this.port = port;
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
     * Runs.
     *
     * @param stopped counts down when the process is to end
     * @return whether there is a configuration now; false if the process is to end
     */
    boolean run(CountDownLatch stopped) throws InterruptedException {
        AtomicLong pulse = new AtomicLong();
        PageFitter fitter =
                PageFitter.first(file, port == PageSettings.USUAL_PORT ? OptionalInt.empty() : OptionalInt.of(port));
        try (FirstPage page = new FirstPage(PageSettings.forThisComputer(port), fitter);
                ServiceWatch service = ServiceWatch.of(
                        System.getenv(),
                        pulse::incrementAndGet,
                        () -> "no configuration yet: fit the lights on the page")) {
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
