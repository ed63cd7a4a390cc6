package dev.lampwright.config;

import dev.lampwright.desk.DeskSettings;
import dev.lampwright.desk.QuietHours;
import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;

/** The sections {@code [desk]}, what people can ask for, and {@code [quiet]}, quiet hours. */
final class DeskSection {
    private static final String WANTED_ZONE =
            "give a name of the IANA time zone database, for instance \"Europe/Lisbon\", or leave it out for this machine's";

    private static final Key<Double> BRIGHTNESS = Key.number("brightness", 0, 1)
            .usual(DeskSettings.USUAL.brightness(), Wording.number(DeskSettings.USUAL.brightness()))
            .example("1.0", "of the strip, until somebody asks for another");
    private static final Key<Boolean> KEEP = Key.flag("keep")
            .otherwise(DeskSettings.USUAL.keep(), Boolean.toString(DeskSettings.USUAL.keep()))
            .comment("true", "what people ask for survives a restart");
    private static final Key<Double> LIGHT = Key.number("light", 0, 1)
            .usual(QuietHours.USUAL_LIGHT, Wording.number(QuietHours.USUAL_LIGHT))
            .comment("0.15", "what is left; 0 is dark");
    private static final Key<ZoneId> TIME_ZONE = Key.parsed(
                    "time_zone", "name of the IANA time zone database", WANTED_ZONE, DeskSection::zone)
            .without("this machine's")
            .comment("\"Europe/Lisbon\"", "where the times are local");

    /** What people can ask for. */
    static final Section SECTION =
            Section.of("desk", "where people ask for things", DeskPrefix.PREFIX, BRIGHTNESS, KEEP);

    /** The quiet hours. */
    static final Section QUIET = Section.of(
            "quiet",
            "quiet hours, when all light except a fault is dimmed",
            Key.own("from", "local time").needed().comment("\"22:30\"", "local time, with daylight saving time"),
            Key.own("to", "local time").needed().comment("\"07:00\"", "when quiet hours end"),
            LIGHT,
            TIME_ZONE);

    private DeskSection() {}

    /**
     * Reads the sections.
     *
     * @param desk the first
     * @param quiet the second
     * @return what they say
     */
    static DeskSettings read(Table desk, Table quiet) {
        Table section = desk.as(SECTION);
        double brightness = section.get(BRIGHTNESS);
        boolean keep = section.get(KEEP);
        return new DeskSettings(brightness, quiet.keys().isEmpty() ? Optional.empty() : hours(quiet.as(QUIET)), keep);
    }

    private static Optional<QuietHours> hours(Table table) {
        LocalTime from = table.needTimeOfDay("from");
        LocalTime to = table.needTimeOfDay("to");
        if (from.equals(to) && table.right()) {
            table.mistake("to", "is the same as from", "give the time at which quiet hours end");
        }
        double light = table.get(LIGHT);
        ZoneId zone = table.find(TIME_ZONE).orElseGet(ZoneId::systemDefault);
        return Optional.of(new QuietHours(from, to, zone, light));
    }

    private static ZoneId zone(String name) {
        try {
            return ZoneId.of(name);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("is " + Wording.quoted(name) + ", which is not a time zone", e);
        }
    }
}
