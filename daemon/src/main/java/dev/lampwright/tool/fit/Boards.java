package dev.lampwright.tool.fit;

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
     * @param description maker and product as the device has them; may be empty
     * @param here what the controller says of itself
     */
    record Answering(String port, String description, Here here) implements Candidate {}

    /**
     * A port where none answers.
     *
     * @param port its best name
     * @param obstacle why none does, and what to do
     */
    record Silent(String port, String obstacle) implements Candidate {}

    /**
     * Looks at all ports that there are, and asks who is there.
     *
     * @return a candidate for each
     */
    List<Candidate> look();

    /**
     * Asks at one port who is there.
     *
     * @param port its name
     * @return the candidate
     */
    Candidate ask(String port);

    /**
     * The light of a controller.
     *
     * @param port the port that it is at
     * @param here what it says of itself
     * @return a light, dark at first
     */
    ShownLight light(String port, Here here);

    /**
     * How fast the lines are.
     *
     * @return bits a second
     */
    int baud();
}
