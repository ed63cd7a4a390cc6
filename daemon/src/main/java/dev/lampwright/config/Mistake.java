package dev.lampwright.config;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One mistake in a configuration, reported to the user.
 *
 * @param file name of the file, as the user gave it
 * @param line line of the file, from 1; 0 if the mistake has no line, such as a missing key
 * @param key dotted key; empty if it concerns the file as a whole
 * @param what what is wrong, to follow the key: {@code is empty}
 * @param whatWouldBeRight what to do: {@code give the MQTT topic, for instance "shop/alder/heat"}
 * @param code names the two sentences, for their translation; empty if there is no code
 * @param values the texts and numbers in them, by name
 */
public record Mistake(
        String file,
        int line,
        String key,
        String what,
        String whatWouldBeRight,
        String code,
        Map<String, Object> values) {
    /** Control characters are shown by their number, so that a mistake stays on one line. */
    public Mistake {
        key = Wording.printable(key);
        what = Wording.printable(what);
        whatWouldBeRight = Wording.printable(whatWouldBeRight);
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /**
     * One without a code.
     *
     * @param file as above
     * @param line as above
     * @param key as above
     * @param what as above
     * @param whatWouldBeRight as above
     */
    public Mistake(String file, int line, String key, String what, String whatWouldBeRight) {
        this(file, line, key, what, whatWouldBeRight, "", Map.of());
    }

    /**
     * Where in a part of the file it is.
     *
     * @param path the key of that part
     * @return the names that lead on from there, none for the part itself; empty if it is elsewhere
     */
    public Optional<List<String>> within(List<String> path) {
        String part = Wording.key(path);
        if (key.equals(part)) {
            return Optional.of(List.of());
        }
        return key.startsWith(part + '.')
                ? Optional.of(List.of(key.substring(part.length() + 1).split("\\.", -1)))
                : Optional.empty();
    }

    /**
     * What is wrong and what to do, without the file.
     *
     * @return for instance {@code strip.pixels: is 0; give a whole number from 1 to 65535}
     */
    public String sentence() {
        return (key.isEmpty() ? "" : key + ": ") + what + "; " + whatWouldBeRight;
    }

    /**
     * The mistake on one line.
     *
     * @return for example {@code alder.toml:12: strip.pixels: is 0; give a whole number from 1 to 65535}
     */
    @Override
    public String toString() {
        String place = line == 0 ? Wording.printable(file) : Wording.printable(file) + ":" + line;
        return place + ": " + sentence();
    }
}
