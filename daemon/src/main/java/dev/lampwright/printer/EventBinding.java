package dev.lampwright.printer;

import dev.lampwright.payload.Source;
import java.time.Duration;
import java.util.List;

/**
 * Where the printer says that something begins and ends, such as the taking of a picture.
 *
 * @param source where the word is told
 * @param begin words with which it begins; {@code *} stands for any characters, case does not count
 * @param end words with which it ends
 * @param lasts how long it lasts at most, so that an end that is never told does no harm
 */
public record EventBinding(Source source, List<String> begin, List<String> end, Duration lasts) {
    /** Keeps copies of the lists. */
    public EventBinding {
        begin = List.copyOf(begin);
        end = List.copyOf(end);
    }
}
