package dev.lampwright.config;

import dev.lampwright.file.RegularFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;

/** The text of a file. */
final class FileText {
    private static final int MOST_BYTES = 1 << 20;
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private FileText() {}

    /**
     * Reads a whole file.
     *
     * @param file its path
     * @return its text, without a byte order mark
     * @throws ConfigException if it does not exist, cannot be read, is longer than 1 MiB, or is not UTF-8
     */
    static String read(Path file) throws ConfigException {
        try {
            RegularFile.require(file);
        } catch (IOException e) {
            throw wrong(file, 0, e.getMessage(), "give the path of a configuration file");
        }
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                throw wrong(file, 0, "is longer than 1 MiB", "give the path of a configuration file");
            }
            return decoded(file, bytes);
        } catch (NoSuchFileException e) {
            throw wrong(file, 0, "there is no such file", "give the path of a configuration file");
        } catch (AccessDeniedException e) {
            throw wrong(file, 0, "cannot be read by this user", "let the user read it, or choose another file");
        } catch (IOException e) {
            throw wrong(file, 0, "cannot be read: " + e.getMessage(), "give the path of a configuration file");
        }
    }

    private static String decoded(Path file, byte[] bytes) throws ConfigException {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        if (decoder.decode(in, out, true).isError()) {
            throw wrong(file, lineAt(bytes, in.position()), "is not UTF-8", "save the file as UTF-8");
        }
        String text = out.flip().toString();
        return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    }

    private static int lineAt(byte[] bytes, int end) {
        int line = 1;
        for (int i = 0; i < end; i++) {
            if (bytes[i] == '\n') {
                line++;
            }
        }
        return line;
    }

    private static ConfigException wrong(Path file, int line, String what, String right) {
        return new ConfigException(List.of(new Mistake(file.toString(), line, "", what, right)));
    }
}
