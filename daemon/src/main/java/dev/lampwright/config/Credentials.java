package dev.lampwright.config;

import java.nio.file.Path;
import java.util.Map;

/** Secrets that the service manager hands over when it starts the daemon, by systemd.exec(5); before that they are nowhere. */
public final class Credentials {
    private static final Path ALL = Path.of("/run/credentials");
    private static final String FOLDER = "CREDENTIALS_DIRECTORY";

    /** Where systemd puts them for the service of the package. */
    private static final Path USUAL = ALL.resolve("lampwright.service");

    private Credentials() {}

    /**
     * Where one is. Whoever only checks a file is handed none, so that they are not there is no mistake in it.
     *
     * @param name its name
     * @param environment of this process
     */
    static Path file(String name, Map<String, String> environment) {
        return Path.of(environment.getOrDefault(FOLDER, USUAL.toString()), name);
    }

    /**
     * Whether a file is one.
     *
     * @param file its path, absolute
     * @param environment of this process
     * @return true if the service manager hands it over
     */
    public static boolean isOne(Path file, Map<String, String> environment) {
        return file.startsWith(ALL) || (environment.containsKey(FOLDER) && file.startsWith(environment.get(FOLDER)));
    }
}
