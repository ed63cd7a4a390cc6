package dev.lampwright.look;

import dev.lampwright.signal.Follow;

/** A number between 0 and 1 that is fixed or follows a signal. A value: it remembers nothing. */
public sealed interface Level {
    /**
     * The number now.
     *
     * @param moment the time and the signals
     * @return 0 to 1; 0 while a signal is unknown
     */
    double at(Moment moment);

    /**
     * Always the same.
     *
     * @param value 0 to 1
     * @return the level
     */
    static Level fixed(double value) {
        return new Fixed(value);
    }

    /**
     * Whatever a signal says.
     *
     * @param follow the signal and its bounds
     * @return the level
     */
    static Level by(Follow follow) {
        return new Following(follow);
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
    }

    /**
     * A level that follows a signal.
     *
     * @param follow the signal and its bounds
     */
    record Following(Follow follow) implements Level {
        @Override
        public double at(Moment moment) {
            double share = moment.share(follow);
            return Double.isNaN(share) ? 0 : share;
        }
    }
}
