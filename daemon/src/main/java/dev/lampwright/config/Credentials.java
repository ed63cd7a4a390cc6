package dev.lampwright.config;

import java.nio.file.Path;
import java.util.Map;

/** Secrets that the service manager provides when it starts the daemon, see systemd.exec(5); they do not exist before. */
public final class Credentials {
    private static final Path ALL = Path.of("/run/credentials");
    private static final String FOLDER = "CREDENTIALS_DIRECTORY";

    /** Where systemd puts them for the packaged service. */
    private static final Path USUAL = ALL.resolve("lampwright.service");

    private Credentials() {}

    /**
     * Where one is. A process that only checks a file is given none, so a missing one is not a mistake in the file.
     *
     * @param name its name
     * @param environment of this process
     */
    static Path file(String name, Map<String, String> environment) {
        return Path.of(environment.getOrDefault(FOLDER, USUAL.toString()), name);
    }

    /**
     * Whether a file is a credential.
     *
     * @param file its path, absolute
     * @param environment of this process
     * @return true if the service manager provides it
     */
    public static boolean isOne(Path file, Map<String, String> environment) {
        return file.startsWith(ALL) || (environment.containsKey(FOLDER) && file.startsWith(environment.get(FOLDER)));
    }
}
