package dev.lampwright.page;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.zip.GZIPOutputStream;

/**
 * One of the page's files: plain, compressed, and with a tag that identifies its content.
 *
 * @param plain the content
 * @param packed the same by gzip (RFC 1952)
 * @param tag 16 hexadecimal digits derived from the content
 */
record Sheet(StaticFile plain, StaticFile packed, String tag) {
    private static final int TAG_BYTES = 8;

    static Sheet of(String type, byte[] bytes) {
        return new Sheet(new StaticFile(type, bytes), new StaticFile(type, gzip(bytes)), tag(bytes));
    }

    private static byte[] gzip(byte[] bytes) {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed)) {
            gzip.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return packed.toByteArray();
    }

    private static String tag(byte[] bytes) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(bytes);
            return HexFormat.of().formatHex(hash, 0, TAG_BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
