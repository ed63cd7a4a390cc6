package dev.lampwright.config;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Finds by meaning what somebody may have wanted to write in a layer, using the table {@code everyday-words.txt}. */
final class EverydayWords {
    private static final String OF_KEYS = "key";
    private static final Map<String, String> ADVICE = read();

    private EverydayWords() {}

    /**
     * What to write instead of a value.
     *
     * @param key the key whose value it is
     * @param value a value that the key does not know; its first word counts
     * @return advice, to follow a semicolon
     */
    static Optional<String> value(String key, String value) {
        String bare = value.strip();
        int end = 0;
        while (end < bare.length() && (Character.isLetter(bare.charAt(end)) || "-_".indexOf(bare.charAt(end)) >= 0)) {
            end++;
        }
        return Optional.ofNullable(ADVICE.get(key + ' ' + folded(bare.substring(0, end))));
    }

    /**
     * What to write instead of a key of a layer.
     *
     * @param key an unknown one
     * @return advice, to follow a semicolon
     */
    static Optional<String> key(String key) {
        return Optional.ofNullable(ADVICE.get(OF_KEYS + ' ' + folded(key)));
    }

    private static Map<String, String> read() {
        try (InputStream file = EverydayWords.class.getResourceAsStream("everyday-words.txt")) {
            return read(new String(file.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, String> read(String text) {
        Map<String, String> advice = new HashMap<>();
        text.lines().filter(line -> !line.startsWith("#") && !line.isBlank()).forEach(line -> {
            String[] parts = line.split(" \\| ", -1);
            for (String word : parts[1].split(" ", -1)) {
                if (advice.put(parts[0] + ' ' + folded(word), parts[2]) != null) {
                    throw new IllegalStateException(word + " appears twice");
                }
            }
        });
        return advice;
    }

    private static String folded(String word) {
        return word.toLowerCase(Locale.ROOT).replaceAll("[-_ ]", "");
    }
}
