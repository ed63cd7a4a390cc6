package dev.lampwright.config;

import java.util.List;
import java.util.stream.Collectors;

/** A configuration cannot be used. Contains everything that is wrong with it. */
public final class ConfigException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<Mistake> mistakes;

    /**
     * Creates one.
     *
     * @param mistakes what is wrong, 1 or more
     */
    public ConfigException(List<Mistake> mistakes) {
        super(mistakes.stream().map(Mistake::toString).collect(Collectors.joining("\n")));
        this.mistakes = List.copyOf(mistakes);
    }

    /**
     * Everything that is wrong.
     *
     * @return 1 or more, in the order of the lines; mistakes without a line come last
     */
    public List<Mistake> mistakes() {
        return mistakes;
    }
}
