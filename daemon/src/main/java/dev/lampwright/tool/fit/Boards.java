package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Here;
import java.util.List;
import java.util.Optional;

/** Where controllers are found, and lit. */
public interface Boards {
    /**
     * A port that may have a controller.
     *
     * @param port its best name, for the configuration
     * @param description maker and product as the device tells them; may be empty
     * @param here what the controller there says of itself; empty if none answers
     * @param obstacle why none answers, and what to do; empty if one does
     */
    public record Candidate(String port, String description, Optional<Here> here, String obstacle) {}

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
