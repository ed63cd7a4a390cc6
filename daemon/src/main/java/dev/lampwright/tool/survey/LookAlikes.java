package dev.lampwright.tool.survey;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What else looks like a printer, besides the one that was found: what {@link Assignment} finds among everything that is reported
 * elsewhere.
 */
final class LookAlikes {
    /** The maximum number listed. */
    static final int MOST = 8;

    private LookAlikes() {}

    /**
     * Looks for other printers.
     *
     * @param found what was found
     * @param trails all values
     * @return their places, eight at most; none if it is not known where the one that was found reports
     */
    static List<Place> beside(List<Found> found, Collection<Trail> trails) {
        List<Place> others = new ArrayList<>();
        Optional<Place> own = isPrinter(found) ? Place.of(found) : Optional.empty();
        Optional<Place> next = own;
        Collection<Trail> rest = trails;
        while (next.isPresent() && others.size() < MOST) {
            rest = without(rest, next.get());
            List<Found> more = new Assignment(rest).found();
            next = isPrinter(more) ? place(more, own.get(), found) : Optional.empty();
            next.ifPresent(others::add);
        }
        return others;
    }

    private static List<Trail> without(Collection<Trail> trails, Place place) {
        return trails.stream()
                .filter(trail -> !place.holds(trail.source().topicFilter()))
                .toList();
    }

    /** A thing with a bed or a nozzle. */
    private static boolean isPrinter(List<Found> found) {
        return found.stream().map(Found::role).anyMatch(role -> role == Role.BED_ACTUAL || role == Role.NOZZLE_ACTUAL);
    }

    /**
     * The place that reports all of it; or the place of its surest temperature, if the values come from several printers and surround the
     * one that was found.
     */
    private static Optional<Place> place(List<Found> more, Place own, List<Found> found) {
        Optional<Found> surest = more.stream()
                .filter(one -> HeatedPart.of(one.role()).isPresent())
                .max(Comparator.comparingDouble(Found::score));
        return Place.of(more)
                .filter(place -> isApart(place, found))
                .or(() -> Place.of(surest.stream().toList()))
                .map(place -> place.beside(own))
                .filter(place -> isApart(place, found));
    }

    private static boolean isApart(Place place, List<Found> found) {
        return found.stream().noneMatch(one -> place.holds(one.source().topicFilter()));
    }
}
