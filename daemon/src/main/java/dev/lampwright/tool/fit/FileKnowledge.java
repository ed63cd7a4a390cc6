package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** What the rest of Lampwright makes of a configuration, which the fitting only writes. */
public interface FileKnowledge {
    /**
     * What is in force with a configuration, its defaults included.
     *
     * @param port where the controller is
     * @param baud bits a second
     * @param setup what the controller is set up with
     * @param broker what is in the section {@code broker}, paths made whole
     * @param faults whether some word or code of the printer's shows a fault
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
     * @return what is in force with it
     * @throws IOException if it is not right; the text has a line for each mistake
     */
    InForce inForce(String text) throws IOException;

    /**
     * Puts what a survey has found into a configuration.
     *
     * @param text the configuration
     * @param sections what was found, as {@link PrinterFinder} gives it
     * @return the configuration with it; all else is as it was
     */
    String withPrinter(String text, String sections);

    /**
     * Says what there is to say of a file that was just written.
     *
     * @param file a configuration
     * @return lines for the user
     */
    List<String> review(Path file);
}
