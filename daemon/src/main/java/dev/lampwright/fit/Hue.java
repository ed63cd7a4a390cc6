package dev.lampwright.fit;

/** What somebody says of the pixels that are lit. */
enum Hue {
    RED('R'),
    GREEN('G'),
    BLUE('B'),
    WHITE('W'),
    /** They differ from one another. */
    DIFFERENT('?'),
    /** None is lit. */
    NOTHING('-');

    private final char letter;

    Hue(char letter) {
        this.letter = letter;
    }

    /** The hue of a channel. */
    static Hue of(char letter) {
        for (Hue hue : values()) {
            if (hue.letter == letter) {
                return hue;
            }
        }
        throw new IllegalArgumentException("no channel is called " + letter);
    }
}
