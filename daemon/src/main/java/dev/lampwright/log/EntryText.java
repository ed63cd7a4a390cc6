package dev.lampwright.log;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;

/** What an entry says. */
final class EntryText {
    private EntryText() {}

    /** The message, and below it the stack trace, if there is one, for whoever mends the program. */
    static String of(ILoggingEvent event) {
        return event.getThrowableProxy() == null
                ? event.getFormattedMessage()
                : event.getFormattedMessage()
                        + System.lineSeparator()
                        + ThrowableProxyUtil.asString(event.getThrowableProxy()).stripTrailing();
    }
}
