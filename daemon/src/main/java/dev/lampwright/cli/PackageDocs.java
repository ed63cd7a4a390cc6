package dev.lampwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;
import picocli.AutoComplete;
import picocli.CommandLine;

/** Writes what a package contains besides the program: manual page, shell completion and changelog. For the build. */
final class PackageDocs {
    private static final int EXTRA_FLAGS_AT = 8;
    private static final byte SLOWEST = 2;

    private PackageDocs() {}

    /**
     * Writes the files.
     *
     * @param args the folder to write to, and the changelog
     * @throws IOException if that fails
     */
    public static void main(String[] args) throws IOException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        CommandLine command = Lampwright.commandLine();
        String manual = ManualPage.of(command, new BuildVersion().getVersion()[0]);
        Files.write(folder.resolve("lampwright.1.gz"), zipped(manual));
        Files.writeString(folder.resolve("lampwright.bash"), completion(command));
        Files.write(folder.resolve("changelog.gz"), zipped(Files.readString(Path.of(args[1]))));
    }

    /** Without its first line, which names an interpreter: the shell reads the file rather than running it. */
    private static String completion(CommandLine command) {
        return AutoComplete.bash("lampwright", command).replaceFirst("#!.*\\R", "");
    }

    /** As with {@code gzip -9n}: no name, no time, and the flag of RFC 1952 for the slowest algorithm, which Java does not set. */
    static byte[] zipped(String text) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new Slowest(bytes)) {
            out.write(text.getBytes(StandardCharsets.UTF_8));
        }
        byte[] zipped = bytes.toByteArray();
        zipped[EXTRA_FLAGS_AT] = SLOWEST;
        return zipped;
    }

    private static final class Slowest extends GZIPOutputStream {
        Slowest(ByteArrayOutputStream out) throws IOException {
            super(out);
            def.setLevel(Deflater.BEST_COMPRESSION);
        }
    }
}
