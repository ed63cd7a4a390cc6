package dev.lampwright.tool.fit;

import dev.lampwright.protocol.Here;
import java.util.Optional;

/**
 * A port that may have a controller.
 *
 * @param port its best name, for the configuration
 * @param description maker and product as the device tells them; may be empty
 * @param here what the controller there says of itself; empty if none answers
 * @param obstacle why none answers, and what to do; empty if one does
 */
public record Candidate(String port, String description, Optional<Here> here, String obstacle) {}
