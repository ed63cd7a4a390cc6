package dev.lampwright.file;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/** What distinguishes a file from an earlier version of it: its time, its length, and which file it is. */
public final class FileMark {
    private FileMark() {}

    /**
     * Inspects a file.
     *
     * @param file its path
     * @return a text that differs once the file has changed
     * @throws IOException if it cannot be inspected
     */
    public static String of(Path file) throws IOException {
        BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
        return attributes.lastModifiedTime() + " " + attributes.size() + " " + attributes.fileKey();
    }
}
