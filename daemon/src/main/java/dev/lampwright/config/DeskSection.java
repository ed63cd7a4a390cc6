package dev.lampwright.config;

import dev.lampwright.desk.DeskSettings;
import dev.lampwright.desk.QuietHours;
import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;

/** The sections {@code [desk]}, where people ask for things, and {@code [quiet]}, the hours of the night. */
final class DeskSection {
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
        double brightness = desk.number("brightness", 0, 1, DeskSettings.USUAL.brightness());
        return new DeskSettings(brightness, quiet.keys().isEmpty() ? Optional.empty() : hours(quiet));
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
            throw new IllegalArgumentException("is " + Wording.quoted(name) + ", which is no time zone", e);
        }
    }
}
