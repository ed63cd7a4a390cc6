package dev.lampwright.tool.bench;

import dev.lampwright.tool.bench.LookShelves.From;
import java.util.Optional;

/**
 * The texts that a daemon's looks and cues are in, as they were read at one time.
 *
 * @param file that of the configuration file
 * @param kept that of the looks that are kept apart; empty if there is no such file
 * @param shared that of the file that all rigs share; empty if there is none
 */
record BenchTexts(String file, Optional<String> kept, Optional<String> shared) {
    /** The text of one of them that can be written; empty if it is not there. */
    String in(From place) {
        return place == From.FILE ? file : kept.orElse("");
    }

    /** The same with another text in one of them. */
    BenchTexts with(From place, String text) {
        return place == From.FILE
                ? new BenchTexts(text, kept, shared)
                : new BenchTexts(file, Optional.of(text), shared);
    }
}
