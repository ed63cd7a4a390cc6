package dev.lampwright.printer;

import dev.lampwright.payload.Source;
import java.util.List;

/**
 * Where the broker says that the printer is gone: the printer's last will (MQTT 3.1.1, section 3.1.2.5).
 *
 * @param source where the word is told
 * @param gone the words that say so; {@code *} stands for any characters, case does not count. Any other word says that it is there
 */
public record WillBinding(Source source, List<String> gone) {
    /** Keeps a copy of the list. */
    public WillBinding {
        gone = List.copyOf(gone);
    }
}
