package dev.lampwright.look;

import dev.lampwright.signal.Follow;
import dev.lampwright.signal.Signals;
import java.util.Optional;

/** A number between 0 and 1 that is fixed or follows a signal. A value without state. */
public sealed interface Level {
    /**
     * The number now.
     *
     * @param moment the time and the signals
     * @return 0 to 1; 0 while a signal is unknown
     */
    double at(Moment moment);

    /**
     * The signal that it follows.
     *
     * @return the signal and its bounds; empty if it follows none
     */
    default Optional<Follow> follows() {
        return Optional.empty();
    }

    /**
     * How long the number stays, if nothing new is heard.
     *
     * @param moment the time and the signals
     * @return ns: 0 while it moves, {@link Signals#FOREVER} if it does not
     */
    long stillFor(Moment moment);

    /**
     * A constant level.
     *
     * @param value 0 to 1
     * @return the level
     */
    static Level fixed(double value) {
        return new Fixed(value);
    }

    /**
     * A level that follows a signal.
     *
     * @param follow the signal and its bounds
     * @return the level
     */
    static Level by(Follow follow) {
        return new Following(follow);
    }

    /**
     * A level that follows a signal between two thresholds.
     *
     * @param follow the signal and its bounds
     * @param darkBelow value of the signal below which the level is 0; −∞ if none
     * @param fullFrom value of the signal from which the level is 1; ∞ if none. If equal to {@code darkBelow}, the level is either 0 or 1
     * @return the level
     */
    static Level between(Follow follow, double darkBelow, double fullFrom) {
        return new Cut(follow, darkBelow, fullFrom);
    }

    /**
     * A level that stays.
     *
     * @param value 0 to 1
     */
    record Fixed(double value) implements Level {
        @Override
        public double at(Moment moment) {
            return value;
        }

        @Override
        public long stillFor(Moment moment) {
            return Signals.FOREVER;
        }
    }

    /**
     * A level that follows a signal.
     *
     * @param follow the signal and its bounds
     */
    record Following(Follow follow) implements Level {
        @Override
        public Optional<Follow> follows() {
            return Optional.of(follow);
        }

        @Override
        public double at(Moment moment) {
            double share = moment.share(follow);
            return Double.isNaN(share) ? 0 : share;
        }

        @Override
        public long stillFor(Moment moment) {
            return moment.stillFor(follow.signal());
        }
    }

    /**
     * A level that follows a signal between two thresholds.
     *
     * @param follow the signal and its bounds
     * @param darkBelow value below which it is 0
     * @param fullFrom value from which it is 1
     */
    record Cut(Follow follow, double darkBelow, double fullFrom) implements Level {
        @Override
        public Optional<Follow> follows() {
            return Optional.of(follow);
        }

        @Override
        public double at(Moment moment) {
            double value = moment.value(follow.signal());
            if (Double.isNaN(value) || value < darkBelow) {
                return 0;
            }
            return value >= fullFrom ? 1 : follow.share(value);
        }

        @Override
        public long stillFor(Moment moment) {
            return moment.stillFor(follow.signal());
        }
    }
}
