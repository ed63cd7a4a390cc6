package dev.lampwright.tool.survey;

import java.util.List;
import java.util.stream.Stream;

/**
 * Whether what was found belongs to a printer at all. Many machines report a state and a count; only printers report a bed, a nozzle or
 * layers.
 */
final class PrinterSigns {
    /** How words for printing begin, in a few languages. Common practice, no source. */
    private static final List<String> PRINT =
            List.of("print", "druck", "imprim", "impres", "stamp", "tisk", "druk", "skriv", "tulost", "nyomt");

    private PrinterSigns() {}

    /** Whether they exist. */
    static boolean areIn(List<Found> found) {
        return found.stream()
                .anyMatch(one -> HeatedPart.of(one.role()).isPresent()
                        || words(one).flatMap(text -> Tokens.of(text).stream()).anyMatch(PrinterSigns::isOfPrinting));
    }

    private static Stream<String> words(Found found) {
        return Stream.concat(
                Stream.of(found.source().topicFilter(), found.source().place()), found.words().stream());
    }

    private static boolean isOfPrinting(String token) {
        return Vocabulary.strength(Concept.LAYER, token) > 0 || PRINT.stream().anyMatch(token::startsWith);
    }
}
