package dev.lampwright.link;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Loads the native half of the serial library, once, from a directory that only this process can write to. By default, the library unpacks
 * to a place in the temporary directory that any local user can prepare, and prints stack traces if it fails.
 */
final class SerialLibrary {
    private static final String PATH_PROPERTY = "jSerialComm.library.path";
    private static final String FILE = "libjSerialComm.so";
    private static final String CURE =
            "start java with -Djava.io.tmpdir=DIR, where DIR can be written to and run from, or with -D" + PATH_PROPERTY
                    + "=DIR, where DIR holds " + FILE;

    private static boolean loaded;
    /** Why it cannot be loaded: a class that has failed once cannot be loaded again. Empty until then. */
    private static String failure = "";

    private SerialLibrary() {}

    /** Makes the library's own class load its native half. */
    interface Loader {
        /** Loads it, by the path in the system property. */
        void load();
    }

    /**
     * Loads the library if it is not loaded yet.
     *
     * @param loader touches the library's class
     * @throws LineException if it cannot be unpacked or loaded; the message says where, why and what to do
     */
    static synchronized void load(Loader loader) throws LineException {
        if (loaded) {
            return;
        }
        if (!failure.isEmpty()) {
            throw new LineException(failure);
        }
        boolean unpackedByUser = !System.getProperty(PATH_PROPERTY, "").isEmpty();
        if (unpackedByUser || !isLinux()) {
            link(loader);
        } else {
            unpackAndLink(loader);
        }
        loaded = true;
    }

    private static void unpackAndLink(Loader loader) throws LineException {
        Path directory = unpack();
        System.setProperty(PATH_PROPERTY, directory.toString());
        try {
            link(loader);
        } finally {
            System.clearProperty(PATH_PROPERTY);
            delete(directory);
        }
    }

    private static void link(Loader loader) throws LineException {
        try {
            loader.load();
        } catch (LinkageError e) {
            failure = "the serial library cannot be loaded (" + firstLine(e) + "): " + CURE;
            throw new LineException(failure);
        }
    }

    /** Unpacks the library into a new directory below the first place that is writable and allows execution. */
    private static Path unpack() throws LineException {
        List<String> failures = new ArrayList<>();
        for (String property : List.of("java.io.tmpdir", "user.home")) {
            Path parent = Path.of(System.getProperty(property, "/tmp"));
            Optional<Path> directory = unpackBelow(parent, failures);
            if (directory.isPresent()) {
                return directory.get();
            }
        }
        throw new LineException("the serial library cannot be unpacked: " + String.join(", ", failures) + "; " + CURE);
    }

    private static Optional<Path> unpackBelow(Path parent, List<String> failures) throws LineException {
        Path directory;
        try {
            directory = Files.createTempDirectory(parent, "lampwright-");
        } catch (IOException e) {
            failures.add(parent + " cannot be written to");
            return Optional.empty();
        }
        try {
            boolean runs = true;
            for (String architecture : architectures()) {
                runs &= unpackOne(directory, architecture);
            }
            if (runs) {
                return Optional.of(directory);
            }
            failures.add(parent + " is mounted noexec");
        } catch (IOException e) {
            failures.add(parent + " is full or fails");
        }
        delete(directory);
        return Optional.empty();
    }

    /** Unpacks for one architecture, and returns whether the file system allows executing it. */
    private static boolean unpackOne(Path directory, String architecture) throws IOException, LineException {
        String resource = "/Linux/" + architecture + "/" + FILE;
        Path file = Files.createDirectories(directory.resolve("Linux").resolve(architecture))
                .resolve(FILE);
        try (InputStream library = SerialLibrary.class.getResourceAsStream(resource)) {
            if (library == null) {
                throw new LineException("the serial library has nothing for " + architecture);
            }
            Files.copy(library, file);
        }
        return file.toFile().setExecutable(true) && file.toFile().canExecute();
    }

    /** The library's names for the possible architectures of this machine; it uses the first that loads. */
    private static List<String> architectures() {
        String architecture = System.getProperty("os.arch", "").toLowerCase(Locale.ROOT);
        return switch (architecture) {
            case "amd64", "x86_64" -> List.of("x86_64");
            case "aarch64" -> List.of("armv8_64");
            case "arm" -> List.of("armv5", "armv6hf", "armv7hf", "armv8_32");
            case "i386", "i486", "i586", "i686", "x86" -> List.of("x86");
            default -> List.of(architecture);
        };
    }

    private static boolean isLinux() {
        return System.getProperty("os.name", "").toLowerCase(Locale.ROOT).contains("linux");
    }

    private static String firstLine(Throwable e) {
        return String.valueOf(e.getMessage()).lines().findFirst().orElse("no reason given");
    }

    /** What has been loaded stays in memory; the files are no longer needed. */
    private static void delete(Path directory) {
        try {
            Files.walkFileTree(directory, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                    Files.delete(file);
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult postVisitDirectory(Path visited, IOException e) throws IOException {
                    Files.delete(visited);
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            directory.toFile().deleteOnExit();
        }
    }
}
