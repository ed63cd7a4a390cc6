package dev.lampwright.config;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Files with what people have to know to use the live page.
 *
 * @param asking its first line lets people watch and ask; empty if there is none
 * @param watching its first line lets people watch and no more; empty if there is none
 * @param editing its first line lets people watch, ask and save looks; empty if there is none
 */
public record TokenFiles(Optional<Path> asking, Optional<Path> watching, Optional<Path> editing) {
    /** No files at all. */
    public static final TokenFiles NONE = new TokenFiles(Optional.empty(), Optional.empty(), Optional.empty());

    /**
     * Whether there is a file.
     *
     * @return false if there is none
     */
    public boolean areAny() {
        return asking.isPresent() || watching.isPresent() || editing.isPresent();
    }
}
