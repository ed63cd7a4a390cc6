package dev.lampwright.cli;

import dev.lampwright.config.ConfigException;
import dev.lampwright.config.RigFile;
import dev.lampwright.config.Shop;
import dev.lampwright.config.ShopFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** A command that takes a configuration file also takes the folder of several rigs; this option says which rig. */
final class RigOption {
    /** What the package uses for one printer. */
    static final String ONLY_FILE = "lampwright.toml";

    /** Where the package's service has its configuration. */
    static final String SERVICE = "/etc/lampwright";

    private static final Path FOLDER_OF_THE_SERVICE = Path.of(SERVICE);

    @Option(
            names = "--rig",
            paramLabel = "RIG",
            completionCandidates = Names.class,
            description = "Which rig, if you give a folder with several instead of a file: the one in rigs/RIG.toml.")
    private String name;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /** For completion: a command that the shell runs to list the names, because rigs may be added at any time. */
    private static final class Names implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return List.of("$(cd /etc/lampwright/rigs 2>/dev/null && ls | sed -n 's/[.]toml$//p')")
                    .iterator();
        }
    }

    /** Whether a rig is named. */
    boolean isGiven() {
        return name != null;
    }

    /**
     * The configuration file to use.
     *
     * @param given a file or a folder
     * @return the file: for a folder with a {@code shop.toml} that of the rig, for any other folder its {@code lampwright.toml}, or the one
     *     that was fitted on the service's page
     * @throws ConfigException if there is no such rig
     * @throws ParameterException if it is not clear which rig is meant
     */
    Path file(Path given) throws ConfigException {
        if (!ShopFile.isIn(given)) {
            requireNone(given);
            return Files.isDirectory(given) ? onlyFile(given) : given;
        }
        return isGiven() ? Shop.rig(given, name).path() : only(given);
    }

    /** The file of a folder; for the service's folder without one, the file that was fitted on its page. */
    private static Path onlyFile(Path folder) {
        Path file = folder.resolve(ONLY_FILE);
        Path fitted = StateFile.OF_THE_SERVICE.resolve(ONLY_FILE);
        return folder.equals(FOLDER_OF_THE_SERVICE) && Files.notExists(file) && Files.exists(fitted) ? fitted : file;
    }

    /** The same for a file that need not exist yet. A folder without a {@code shop.toml} is returned as it is. */
    Path fileToWrite(Path given) throws ConfigException {
        if (!ShopFile.isIn(given)) {
            requireNone(given);
            return given;
        }
        return isGiven() ? RigFile.of(given, name).path() : only(given);
    }

    private void requireNone(Path given) {
        if (isGiven()) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--rig goes with a folder that has a shop.toml, and " + given
                            + (Files.isDirectory(given) ? " has none" : " is not a folder"));
        }
    }

    private Path only(Path folder) throws ConfigException {
        List<RigFile> all = RigFile.in(folder);
        Optional<RigFile> only = all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty();
        return only.map(RigFile::path)
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(),
                        folder + " has " + (all.isEmpty() ? "no rigs yet" : all.size() + " rigs")
                                + (all.isEmpty()
                                        ? "; add a file NAME.toml to its folder rigs"
                                        : "; choose one with --rig: "
                                                + String.join(
                                                        ", ",
                                                        all.stream()
                                                                .map(RigFile::name)
                                                                .toList()))));
    }
}
