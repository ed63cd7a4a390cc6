package dev.lampwright.tool.fit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A fitting that is ready to begin. */
public interface FittingTalk {
    /**
     * Asks until it is done or the user stops. Everything is dark afterwards.
     *
     * @return how it ended
     * @throws IOException if a file cannot be read or written; the message says which and what to do
     */
    GuidedFitting.End run() throws IOException;

    /**
     * The fitting that a file needs: a new one or one that was stopped, or changes to a file that exists.
     *
     * @param file the configuration
     * @param terminal where questions go and answers come from
     * @param boards finds controllers
     * @param printers finds out where a printer reports what
     * @param knowledge what the rest of Lampwright knows about the file
     * @return the fitting
     * @throws IOException if an existing file cannot be read, or is not valid
     */
    static FittingTalk of(Path file, Terminal terminal, Boards boards, PrinterFinder printers, FileKnowledge knowledge)
            throws IOException {
        return of(file, terminal, boards, printers, knowledge, NewPage.USUAL);
    }

    /** The same with what is known of the live page of a new file. */
    static FittingTalk of(
            Path file, Terminal terminal, Boards boards, PrinterFinder printers, FileKnowledge knowledge, NewPage page)
            throws IOException {
        return changes(file)
                ? new Refitting(file, terminal, boards, printers, knowledge)::run
                : new GuidedFitting(file, terminal, boards, printers, knowledge, page)::run;
    }

    /**
     * Whether the fitting of a file changes what is there.
     *
     * @param file the configuration
     * @return false if it makes a new file, or resumes that
     */
    static boolean changes(Path file) {
        return Files.exists(file) && !GuidedFitting.isUnderWay(file);
    }
}
