package dev.lampwright.tool.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A possible strip: an order of channels and a length.
 *
 * @param order its order
 * @param pixels its pixels
 */
record SecretStrip(String order, int pixels) {
    /** What somebody sees of the pixels that are lit. */
    enum Seen {
        RED('R'),
        GREEN('G'),
        BLUE('B'),
        WHITE('W'),
        /** They differ from each other. */
        DIFFERENT('?'),
        /** None is lit. */
        NOTHING('-');

        private final char letter;

        Seen(char letter) {
            this.letter = letter;
        }

        /** The hue of a channel. */
        static Seen of(char letter) {
            for (Seen hue : values()) {
                if (hue.letter == letter) {
                    return hue;
                }
            }
            throw new IllegalArgumentException("no channel is called " + letter);
        }
    }

    /**
     * What is seen when some bytes of the line are lit.
     *
     * @param bytes their places on the line, from 0
     * @return empty if a pixel shows a mixture, which people may describe in any way
     */
    Optional<Seen> seen(List<Integer> bytes) {
        List<String> lit = lit(bytes);
        if (lit.isEmpty()) {
            return Optional.of(Seen.NOTHING);
        }
        if (lit.stream().anyMatch(channels -> channels.length() > 1)) {
            return Optional.empty();
        }
        boolean alike = lit.stream().distinct().count() == 1;
        return Optional.of(alike ? Seen.of(lit.get(0).charAt(0)) : Seen.DIFFERENT);
    }

    /**
     * Whether the first pixels show the channels of an order, one each and nothing else, as far as there are pixels.
     *
     * @param bytes what is lit
     * @param letters one for each pixel
     */
    boolean shows(List<Integer> bytes, String letters) {
        return lit(bytes)
                .equals(letters.substring(0, Math.min(letters.length(), pixels))
                        .chars()
                        .mapToObj(Character::toString)
                        .toList());
    }

    /** The channels of each pixel that is lit at all. */
    private List<String> lit(List<Integer> bytes) {
        TreeMap<Integer, StringBuilder> byPixel = new TreeMap<>();
        for (int place : bytes) {
            int pixel = place / order.length();
            if (pixel < pixels) {
                byPixel.computeIfAbsent(pixel, at -> new StringBuilder()).append(order.charAt(place % order.length()));
            }
        }
        List<String> lit = new ArrayList<>();
        byPixel.values().forEach(channels -> lit.add(channels.toString()));
        return lit;
    }
}
