package dev.lampwright.tool.fit;

/** What somebody says of the pixels that are lit. */
enum SeenColour {
    RED('R'),
    GREEN('G'),
    BLUE('B'),
    WHITE('W'),
    /** They differ from one another. */
    DIFFERENT('?'),
    /** None is lit. */
    NOTHING('-');

    private final char letter;

    SeenColour(char letter) {
        this.letter = letter;
    }

    /** The hue of a channel. */
    static SeenColour of(char letter) {
        for (SeenColour hue : values()) {
            if (hue.letter == letter) {
                return hue;
            }
        }
        throw new IllegalArgumentException("no channel is called " + letter);
    }
}
