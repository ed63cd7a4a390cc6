package dev.lampwright.toml;

import dev.lampwright.toml.TomlSource.Place;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.regex.Pattern;

/** Reads the values that are neither strings nor containers: numbers, booleans, dates and times. */
final class TomlScalars {
    /** A number with more characters is refused: exact arithmetic on it would take too long. */
    private static final int LONGEST = 1000;

    private static final Pattern WHOLE = Pattern.compile("[+-]?(0|[1-9][0-9]*)");
    private static final Pattern BASED = Pattern.compile("0x[0-9A-Fa-f]+|0o[0-7]+|0b[01]+");
    private static final Pattern FRACTION = Pattern.compile("[+-]?(0|[1-9][0-9]*)(\\.[0-9]+)?([eE][+-]?[0-9]+)?");
    private static final Pattern NO_NUMBER = Pattern.compile("[+-]?(inf|nan)");
    private static final Pattern ZEROS = Pattern.compile("[+-]?0[0-9]+([.eE].*)?");
    private static final Pattern DATE = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}([Tt ].*)?");
    private static final Pattern TIME = Pattern.compile("[0-9]{2}:[0-9]{2}:[0-9]{2}(\\.[0-9]+)?");
    private static final Pattern HOURS_AND_MINUTES = Pattern.compile("[0-9]{1,2}:[0-9]{2}");
    private static final Pattern OFFSET = Pattern.compile("(.*[0-9])([Zz]|[+-][0-9]{2}:[0-9]{2})");
    private static final Pattern TOO_FINE = Pattern.compile("(\\.[0-9]{9})[0-9]+");

    private final TomlSource text;

    TomlScalars(TomlSource text) {
        this.text = text;
    }

    /** The value that starts at the next character. */
    Object any() throws TomlException {
        Place start = text.place();
        String word = text.word();
        if (DATE.matcher(word).matches() && text.peek() == ' ' && isDigit(text.peek(1)) && isDigit(text.peek(2))) {
            text.skip();
            word = word + 'T' + text.word();
        }
        return value(word, start);
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private Object value(String word, Place start) throws TomlException {
        if (word.equals("true") || word.equals("false")) {
            return word.equals("true");
        }
        if (word.length() > LONGEST) {
            throw start.mistake(TomlSource.quoted(word) + " is not a value: it is too long", "put text in \"quotes\"");
        }
        if (DATE.matcher(word).matches() || TIME.matcher(word).matches()) {
            return dateOrTime(word, start);
        }
        return number(word, start);
    }

    private Object dateOrTime(String word, Place start) throws TomlException {
        String iso = TOO_FINE.matcher(word).replaceFirst("$1").toUpperCase(Locale.ROOT);
        try {
            if (iso.indexOf('T') < 0) {
                return iso.indexOf(':') < 0 ? LocalDate.parse(iso) : LocalTime.parse(iso);
            }
            String local = OFFSET.matcher(iso.substring(11)).replaceFirst("$1");
            if (TIME.matcher(local).matches()) {
                return local.length() == iso.length() - 11 ? LocalDateTime.parse(iso) : OffsetDateTime.parse(iso);
            }
        } catch (DateTimeException e) {
            throw start.mistake(
                    TomlSource.quoted(word) + " is not a date or a time that exists", "put text in \"quotes\"");
        }
        throw notAValue(word, start);
    }

    private Object number(String word, Place start) throws TomlException {
        String digits = underscoresAreBetweenDigits(word) ? word.replace("_", "") : word;
        if (WHOLE.matcher(digits).matches()) {
            return narrowest(new BigInteger(digits));
        }
        if (BASED.matcher(digits).matches()) {
            return narrowest(new BigInteger(digits.substring(2), base(digits.charAt(1))));
        }
        if (NO_NUMBER.matcher(digits).matches()) {
            return noNumber(digits);
        }
        if (FRACTION.matcher(digits).matches()) {
            return decimal(digits, start);
        }
        throw notAValue(word, start);
    }

    private static BigDecimal decimal(String digits, Place start) throws TomlException {
        try {
            return new BigDecimal(digits);
        } catch (NumberFormatException e) {
            throw start.mistake("the number's exponent is too large", "give a number of ordinary size");
        }
    }

    private static Object narrowest(BigInteger number) {
        if (number.bitLength() < Integer.SIZE) {
            return number.intValue();
        }
        return number.bitLength() < Long.SIZE ? (Object) number.longValue() : number;
    }

    private static int base(char letter) {
        return switch (letter) {
            case 'x' -> 16;
            case 'o' -> 8;
            default -> 2;
        };
    }

    private static Double noNumber(String word) {
        if (word.endsWith("nan")) {
            return Double.NaN;
        }
        return word.startsWith("-") ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }

    private static boolean underscoresAreBetweenDigits(String word) {
        int base = word.startsWith("0x") ? 16 : 10;
        for (int at = word.indexOf('_'); at >= 0; at = word.indexOf('_', at + 1)) {
            if (!isDigit(word, at - 1, base) || !isDigit(word, at + 1, base)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isDigit(String word, int at, int base) {
        return at >= 0
                && at < word.length()
                && word.charAt(at) < '\u0080'
                && Character.digit(word.charAt(at), base) >= 0;
    }

    private TomlException notAValue(String word, Place start) {
        if (word.isEmpty()) {
            return text.mistake(
                    TomlSource.quoted(text.shown()) + " is where a value should be", "put text in \"quotes\"");
        }
        String what = TomlSource.quoted(word) + " is not a value";
        String lower = word.toLowerCase(Locale.ROOT);
        if (lower.equals("true") || lower.equals("false")) {
            return start.mistake(what, "write it in small letters: " + lower);
        }
        if ("\u2018\u2019\u201c\u201d\u201e".indexOf(word.charAt(0)) >= 0) {
            return start.mistake(what, "put text in straight \"quotes\"");
        }
        if (ZEROS.matcher(word).matches()) {
            return start.mistake("the number begins with 0", "remove the zeros before the number");
        }
        if (HOURS_AND_MINUTES.matcher(word).matches()) {
            return start.mistake(what, "put the time in \"quotes\", or give it with seconds, for instance 07:30:00");
        }
        return start.mistake(what, "put text in \"quotes\", and write numbers without a unit");
    }
}
