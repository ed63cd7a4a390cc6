package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** What the rest of Lampwright knows about a configuration; the fitting itself only writes it. */
public interface FileKnowledge {
    /**
     * The effective values of a configuration, including defaults.
     *
     * @param port where the controller is
     * @param baud bits a second
     * @param setup the controller's set-up
     * @param broker the content of the section {@code broker}, with absolute paths
     * @param faults whether any of the printer's words or codes shows a fault
     */
    record InForce(String port, int baud, Setup setup, Map<String, String> broker, boolean faults) {
        /** Keeps a copy. */
        public InForce {
            broker = Map.copyOf(broker);
        }
    }

    /**
     * Reads a configuration.
     *
     * @param text TOML
     * @return its effective values
     * @throws IOException if it is not valid; the message has a line for each mistake
     */
    InForce inForce(String text) throws IOException;

    /**
     * Puts what a survey has found into a configuration.
     *
     * @param text the configuration
     * @param sections what was found, as {@link PrinterFinder} returns it
     * @return the configuration with it; everything else is unchanged
     */
    String withPrinter(String text, String sections);

    /**
     * Comments on a file that was just written.
     *
     * @param file a configuration
     * @return phrases for the user
     */
    List<Phrase> review(Path file);
}
