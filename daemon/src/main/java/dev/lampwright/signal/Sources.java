package dev.lampwright.signal;

import dev.lampwright.payload.Quantity;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.Reading;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** The sources of one printer's signals: takes in what is new in a status, and moves their tracks. */
final class Sources {
    private final List<Source> all = new ArrayList<>();
    private final Map<String, Heater> heaters = new HashMap<>();
    private final List<Track> coolings = new ArrayList<>();
    private final Job job = new Job();
    private final CurveFit fit = new CurveFit();
    private final Room room;

    /** Something that moves tracks. */
    interface Source {
        /**
         * Takes in what is new in a status; the same status again changes nothing.
         *
         * @param status the latest
         */
        void follow(PrinterStatus status);
    }

    /** A reading followed unchanged. */
    private static final class ReadValue implements Source {
        private final Function<PrinterStatus, Reading> reading;
        private final Glide glide = new Glide();
        private Reading last = Reading.UNKNOWN;

        ReadValue(Function<PrinterStatus, Reading> reading) {
            this.reading = reading;
        }

        @Override
        public void follow(PrinterStatus status) {
            Reading newest = reading.apply(status);
            if (newest.differsFrom(last)) {
                last = newest;
                glide.to(newest.value(), newest.atNanos());
            }
        }
    }

    /**
     * Creates sources without readings.
     *
     * @param room where the printer is
     */
    Sources(Room room) {
        this.room = room;
        all.add(job);
    }

    /** Adds a source that follows a heated body, unless it exists. */
    Heater heater(Body body) {
        return heaters.computeIfAbsent(body.key(), key -> {
            Heater heater = new Heater(body, room, fit);
            coolings.add(heater.cooling());
            all.add(heater);
            return heater;
        });
    }

    Job job() {
        return job;
    }

    /** Adds a source that follows a reading unchanged. */
    Track reading(Quantity quantity) {
        return followed(status -> status.reading(quantity));
    }

    /** Adds a source that follows a user-defined reading unchanged. */
    Track own(String name) {
        return followed(status -> status.own(name));
    }

    private Track followed(Function<PrinterStatus, Reading> reading) {
        ReadValue value = new ReadValue(reading);
        all.add(value);
        return value.glide;
    }

    /** The hottest of the bodies that are not being heated, including those added later; unknown if there is none. */
    Track stillHot() {
        return new Highest(coolings);
    }

    /** The highest of the known values. */
    private record Highest(List<Track> tracks) implements Track {
        @Override
        public double at(long nanos) {
            double highest = Double.NaN;
            for (int i = 0; i < tracks.size(); i++) {
                double value = tracks.get(i).at(nanos);
                if (value > highest || Double.isNaN(highest)) {
                    highest = value;
                }
            }
            return highest;
        }

        @Override
        public long stillFor(long nanos) {
            long still = Signals.FOREVER;
            for (int i = 0; i < tracks.size(); i++) {
                still = Math.min(still, tracks.get(i).stillFor(nanos));
            }
            return still;
        }
    }

    /**
     * Takes in what is new in a status; the same status again changes nothing.
     *
     * @param status the latest
     */
    void follow(PrinterStatus status) {
        for (int i = 0; i < all.size(); i++) {
            all.get(i).follow(status);
        }
    }
}
