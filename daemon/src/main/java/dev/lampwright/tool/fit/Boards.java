package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import java.util.List;

/** Where controllers are found, and lit. */
public interface Boards {
    /** A port that may have a controller. */
    sealed interface Candidate {
        /**
         * Its best name, for the configuration.
         *
         * @return a path
         */
        String port();
    }

    /**
     * A port where a controller answers.
     *
     * @param port its best name
     * @param description manufacturer and product as reported by the device; may be empty
     * @param here what the controller reports about itself
     */
    record Answering(String port, String description, Here here) implements Candidate {}

    /**
     * A port where no controller answers.
     *
     * @param port its best name
     * @param obstacle why none does, and what to do
     */
    record Silent(String port, Phrase obstacle) implements Candidate {}

    /**
     * Checks all ports for controllers.
     *
     * @return a candidate for each
     */
    List<Candidate> look();

    /**
     * Checks one port for a controller.
     *
     * @param port its name
     * @return the candidate
     */
    Candidate ask(String port);

    /**
     * The light of a controller.
     *
     * @param port the port that it is at
     * @param here what it reports about itself
     * @return a light, dark at first
     */
    ShownLight light(String port, Here here);

    /**
     * The line rate.
     *
     * @return bits a second
     */
    int baud();
}
