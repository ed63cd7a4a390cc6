package dev.lampwright.broker;

import static java.nio.charset.StandardCharsets.UTF_8;

/**
 * Text in characters that Paho accepts. Paho 1.2.5 refuses some that MQTT 3.1.1 allows (section 1.5.3): every character from U+FDD0 on, and
 * control characters; and a refused topic ends the connection. So between Paho and the network such a character is written as {@link #MARK}
 * and two letters of the private use area, with 11 bits of its code point each. {@link BrokerInput} writes topics this way before Paho
 * reads them; {@link BrokerOutput} writes plain text again after Paho.
 */
final class PahoText {
    private static final int MOST_BYTES = 65_535;

    /** Starts a character that is written in three; also stands for itself, written in three. */
    private static final char MARK = '\uE0F1';

    /** Stands for a topic that is longer than MQTT allows once converted for Paho: more than 7000 characters that are written in three. */
    static final String TOO_LONG = String.valueOf(MARK);

    /**
     * Paho 1.2.5 intends to refuse the noncharacters from here to U+FDEF, but also refuses everything after them: full-width letters, or
     * U+FE0F, which makes a heart an emoji.
     */
    private static final int FIRST_NONCHARACTER = 0xFDD0;

    private static final char LETTERS = '\uE800';
    private static final int LETTER_BITS = 11;
    private static final int LETTER_MASK = (1 << LETTER_BITS) - 1;

    private PahoText() {}

    /**
     * Converts text for Paho.
     *
     * @param text any text
     * @return the same, without characters that Paho refuses, except U+0000, which MQTT refuses too
     */
    static String of(String text) {
        if (text.codePoints().noneMatch(PahoText::isWrittenInThree)) {
            return text;
        }
        StringBuilder written = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(point -> {
            if (isWrittenInThree(point)) {
                written.append(MARK)
                        .append((char) (LETTERS + (point >> LETTER_BITS)))
                        .append((char) (LETTERS + (point & LETTER_MASK)));
            } else {
                written.appendCodePoint(point);
            }
        });
        return written.toString();
    }

    /** A topic for Paho in UTF-8; {@link #TOO_LONG} if it would be longer than MQTT allows. */
    static byte[] topic(String text) {
        byte[] written = of(text).getBytes(UTF_8);
        return written.length > MOST_BYTES ? TOO_LONG.getBytes(UTF_8) : written;
    }

    /** The same for a password, which stays in characters that can be overwritten unless Paho would refuse it. */
    static char[] of(char[] text) {
        for (char one : text) {
            if (isWrittenInThree(one) || Character.isSurrogate(one)) {
                return of(String.valueOf(text)).toCharArray();
            }
        }
        return text;
    }

    /**
     * Converts back what {@link #of(String)} has written.
     *
     * @param written the text from Paho
     * @return the original text
     */
    static String plain(String written) {
        if (written.indexOf(MARK) < 0) {
            return written;
        }
        StringBuilder text = new StringBuilder(written.length());
        int at = 0;
        while (at < written.length()) {
            char next = written.charAt(at);
            if (next == MARK && at + 2 < written.length()) {
                text.appendCodePoint(point(written.charAt(at + 1), written.charAt(at + 2)));
                at += 3;
            } else {
                text.append(next);
                at++;
            }
        }
        return text.toString();
    }

    /** Text not written by {@link #of(String)} gives arbitrary characters, and is not refused. */
    private static int point(char high, char low) {
        int point = ((high - LETTERS) << LETTER_BITS) | (low - LETTERS);
        return Character.isValidCodePoint(point) ? point : '\uFFFD';
    }

    /** Whether UTF-8 bytes contain only plain ASCII, which passes unchanged. */
    static boolean isPlainAscii(byte[] utf8) {
        for (byte one : utf8) {
            if (one < ' ' || one == 0x7F) {
                return false;
            }
        }
        return true;
    }

    private static boolean isWrittenInThree(int point) {
        return point == MARK || (point != 0 && Character.isISOControl(point)) || point >= FIRST_NONCHARACTER;
    }
}
