package dev.lampwright.config;

import java.util.Optional;

/** The prefix of a daemon's own topics. */
public final class DeskPrefix {
    /** What would be valid. */
    static final String WANTED = "give the beginning of this printer's own topics, for instance \"lampwright/alder\"";

    private static final int LONGEST = 200;

    /** The key {@code desk.prefix}. */
    static final Key<String> PREFIX = Key.parsed("prefix", "beginning of MQTT topics", WANTED, DeskPrefix::parse)
            .usual(TalkSpec.USUAL_PREFIX, Wording.quoted(TalkSpec.USUAL_PREFIX))
            .example("\"lampwright/alder\"", "one for each daemon at a broker");

    private DeskPrefix() {}

    /**
     * Reads the key {@code desk.prefix}.
     *
     * @param desk the section {@code [desk]}
     * @param rig name of the rig; empty if the configuration is not one of several
     * @return the prefix; a rig's is its name below the default one, unless its file says otherwise
     */
    static String read(Table desk, Optional<String> rig) {
        if (rig.isEmpty() || desk.has(PREFIX.name())) {
            return desk.get(PREFIX);
        }
        String prefix = TalkSpec.USUAL_PREFIX + '/' + rig.get();
        return desk.defaultOf(PREFIX.name(), prefix, Wording.quoted(prefix));
    }

    /**
     * Reads a prefix, by the rules of {@code desk.prefix}: those of MQTT 3.1.1, section 4.7, and no empty level at either end, which is
     * allowed but never intended.
     *
     * @param text the text given
     * @return the same
     * @throws IllegalArgumentException if it is not valid; the message says why and what would be valid, and is meant to follow the name of
     *     the key
     */
    public static String parse(String text) {
        boolean wild = text.chars().anyMatch(c -> c == '+' || c == '#' || Character.isISOControl(c));
        if (text.isEmpty()) {
            throw wrong("is empty");
        }
        if (wild || text.startsWith("$") || text.startsWith("/") || text.endsWith("/")) {
            throw wrong("has +, # or a control character in it, or begins with $ or /, or ends with /");
        }
        if (text.length() > LONGEST) {
            throw wrong("is longer than " + LONGEST + " characters");
        }
        return text;
    }

    private static IllegalArgumentException wrong(String what) {
        return new IllegalArgumentException(what + "; " + WANTED);
    }
}
