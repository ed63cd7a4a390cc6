package dev.lampwright.config;

import dev.lampwright.desk.DeskSettings;
import dev.lampwright.desk.QuietHours;
import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;

/** The sections {@code [desk]}, where people ask for things, and {@code [quiet]}, the hours of the night. */
final class DeskSection {
    private static final int LONGEST_PREFIX = 200;
    private static final String WANTED_PREFIX =
            "give the beginning of this printer's own topics, for instance \"lampwright/alder\"";
    private static final String WANTED_ZONE =
            "give a name of the IANA time zone database, for instance \"Europe/Lisbon\", or leave it out for this machine's";

    private DeskSection() {}

    /**
     * Reads the sections.
     *
     * @param desk the one
     * @param quiet the other
     * @return what they say
     */
    static DeskSettings read(Table desk, Table quiet) {
        String prefix = desk.has("prefix")
                ? desk.parsed("prefix", WANTED_PREFIX, DeskSection::prefix).orElse(DeskSettings.USUAL.prefix())
                : desk.defaultOf("prefix", DeskSettings.USUAL.prefix(), Shown.quoted(DeskSettings.USUAL.prefix()));
        double brightness = desk.number("brightness", 0, 1, DeskSettings.USUAL.brightness());
        return new DeskSettings(prefix, brightness, quiet.keys().isEmpty() ? Optional.empty() : hours(quiet));
    }

    /** By the rules of MQTT 3.1.1, section 4.7; and not empty at either end, which is lawful but nobody means. */
    private static String prefix(String text) {
        boolean wild = text.chars().anyMatch(c -> c == '+' || c == '#' || Character.isISOControl(c));
        if (wild || text.startsWith("$") || text.startsWith("/") || text.endsWith("/")) {
            throw new IllegalArgumentException(
                    "has +, # or a control character in it, or begins with $ or /, or ends with /");
        }
        if (text.length() > LONGEST_PREFIX) {
            throw new IllegalArgumentException("is longer than " + LONGEST_PREFIX + " characters");
        }
        return text;
    }

    private static Optional<QuietHours> hours(Table table) {
        LocalTime from = table.needTimeOfDay("from");
        LocalTime to = table.needTimeOfDay("to");
        if (from.equals(to) && table.right()) {
            table.mistake("to", "is the same as from", "give the time at which the night ends");
        }
        double light = table.number("light", 0, 1, QuietHours.USUAL_LIGHT);
        ZoneId zone = table.parsed("time_zone", WANTED_ZONE, DeskSection::zone).orElseGet(ZoneId::systemDefault);
        return Optional.of(new QuietHours(from, to, zone, light));
    }

    private static ZoneId zone(String name) {
        try {
            return ZoneId.of(name);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("is " + Shown.quoted(name) + ", which is no time zone", e);
        }
    }
}
