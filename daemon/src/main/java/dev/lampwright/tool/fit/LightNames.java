package dev.lampwright.tool.fit;

import java.util.Collection;
import java.util.List;
import java.util.regex.Pattern;

/** Names of zones and lights, as the configuration takes them. */
final class LightNames {
    private static final Pattern NAME = Pattern.compile("[A-Za-z][A-Za-z0-9_-]{0,30}");
    private static final List<String> ALWAYS_THERE = List.of("strip", "plain");

    private LightNames() {}

    /**
     * Reads a name.
     *
     * @param line what was typed
     * @param taken names that other things have
     * @return the name
     * @throws UnusableException if it is none, or taken
     */
    static String read(String line, Collection<String> taken) throws UnusableException {
        if (!NAME.matcher(line).matches()) {
            throw new UnusableException("a name begins with a letter and has letters, digits, _ and -, 31 at most");
        }
        if (ALWAYS_THERE.contains(line) || taken.contains(line)) {
            throw new UnusableException(line + " is the name of something else already; choose another");
        }
        return line;
    }
}
