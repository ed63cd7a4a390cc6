package dev.lampwright.page;

import dev.lampwright.file.RegularFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.HexFormat;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The token that viewers need, and the pass that a browser gets for it. The pass is derived from the token without revealing it: it stays
 * valid after a restart, and becomes invalid when the token changes. There is no {@code toString}, so no log can show either.
 */
final class Token {
    private static final Logger LOG = LoggerFactory.getLogger(Token.class);
    private static final int SHORTEST = 16;
    private static final String MAC = "HmacSHA256";

    private final byte[] token;
    private final byte[] pass;

    private Token(String token) {
        this.token = bytes(token);
        pass = bytes(HexFormat.of().formatHex(mac(this.token, "lampwright page pass")));
    }

    /**
     * Reads the token.
     *
     * @param key of the section {@code [page]} that names the file
     * @param file a file with the token on its first line
     * @return the token
     * @throws IOException if there is none, or one that could be guessed; the message names the file and never shows its content
     */
    static Token read(String key, Path file) throws IOException {
        return new Token(readText(key, file));
    }

    /** A token that is not in a file of its own. */
    static Token of(String text) {
        return new Token(text);
    }

    /** Reads its text, which may be shown only by a command whose user asks for it; otherwise like {@link #read}. */
    static String readText(String key, Path file) throws IOException {
        String what = "page." + key + " " + file;
        requireRegular(what, file);
        try (BufferedReader reader = Files.newBufferedReader(file)) {
            String line = reader.readLine();
            if (line == null || line.strip().length() < SHORTEST) {
                throw new IOException(what + " has a first line of fewer than " + SHORTEST
                        + " characters; write a longer one, for instance what `openssl rand -hex 16` gives");
            }
            warnIfOpen(what, file);
            return line.strip();
        } catch (NoSuchFileException e) {
            throw new IOException(what + " does not exist; write the token there", e);
        } catch (AccessDeniedException e) {
            throw new IOException(what + " cannot be read by this user; change its owner", e);
        } catch (CharacterCodingException e) {
            throw new IOException(what + " is not UTF-8 text; write the token there", e);
        }
    }

    private static void requireRegular(String what, Path file) throws IOException {
        try {
            RegularFile.require(file);
        } catch (IOException e) {
            throw new IOException(what + " " + e.getMessage() + "; write the token into a file", e);
        }
    }

    private static void warnIfOpen(String what, Path file) throws IOException {
        PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        if (view != null && view.readAttributes().permissions().contains(PosixFilePermission.OTHERS_READ)) {
            LOG.warn("{} can be read by every user of this machine; chmod 640 it", what);
        }
    }

    /** Whether this is the token; takes the same time for every wrong one of a length. */
    boolean is(String given) {
        return same(token, given);
    }

    /** Whether this is the pass; takes the same time for every wrong one of a length. */
    boolean isPass(String given) {
        return same(pass, given);
    }

    /** What a browser presents from then on. */
    String pass() {
        return new String(pass, StandardCharsets.UTF_8);
    }

    private static boolean same(byte[] wanted, String given) {
        return MessageDigest.isEqual(wanted, bytes(given));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] mac(byte[] key, String text) {
        try {
            Mac mac = Mac.getInstance(MAC);
            mac.init(new SecretKeySpec(key, MAC));
            return mac.doFinal(bytes(text));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform has " + MAC, e);
        }
    }
}
