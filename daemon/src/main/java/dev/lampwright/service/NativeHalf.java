package dev.lampwright.service;

import com.sun.jna.Native;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;

/**
 * Loads the native half of JNA from a folder that only this process can write to. By default, JNA uses the user's cache folder, which a
 * service may not have. JNA deletes the unpacked file as soon as it is loaded.
 */
final class NativeHalf {
    private static final String FOLDER_PROPERTY = "jna.tmpdir";

    private NativeHalf() {}

    /**
     * Loads it, once.
     *
     * @throws IOException if there is no place to unpack it to and run it from
     */
    static void load() throws IOException {
        Path folder = folder();
        System.setProperty(FOLDER_PROPERTY, folder.toString());
        try {
            if (Native.POINTER_SIZE == 0) {
                throw new IOException("JNA does not know this machine");
            }
        } catch (LinkageError e) {
            throw new IOException("the native half of JNA cannot be loaded: " + e.getMessage(), e);
        } finally {
            Files.deleteIfExists(folder);
        }
    }

    private static Path folder() throws IOException {
        for (String property : List.of("java.io.tmpdir", "user.home")) {
            Path parent = Path.of(System.getProperty(property, "/tmp"));
            if (Files.isWritable(parent) && runsFrom(parent)) {
                return Files.createTempDirectory(parent, "lampwright-");
            }
        }
        throw new IOException("neither java.io.tmpdir nor user.home is a folder that can be written to and run from");
    }

    /** Whether the file system allows executing files: one mounted noexec does not. */
    private static boolean runsFrom(Path parent) throws IOException {
        Path trial = Files.createTempFile(
                parent,
                "lampwright-",
                "",
                PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
        try {
            return Files.isExecutable(trial);
        } finally {
            Files.delete(trial);
        }
    }
}
