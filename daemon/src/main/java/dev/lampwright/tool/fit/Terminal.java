package dev.lampwright.tool.fit;

import java.util.Optional;

/** Where questions are written and answers come from: lines of text, so that anything that reads and writes lines can answer. */
public interface Terminal {
    /**
     * Writes a line.
     *
     * @param line without its end
     */
    void print(String line);

    /**
     * Waits for the next line.
     *
     * @return the line without its end; empty if there will be no more
     */
    Optional<String> readLine();

    /**
     * Whether there will be no more lines. Does not wait.
     *
     * @return true once everything has been read, or somebody asks for the end
     */
    boolean ended();
}
