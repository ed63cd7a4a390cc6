package dev.lampwright.desk;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;

/** Values as written in an answer. */
final class Spoken {
    /** The word that returns something to automatic. */
    static final String AUTO = "auto";

    static final String ON = "on";
    static final String OFF = "off";

    private Spoken() {}

    /** A share, to three decimals at most. */
    static String share(double share) {
        return BigDecimal.valueOf(share)
                .setScale(3, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Says that something is returned to automatic. */
    static String automatic(String what) {
        return what + " automatic";
    }

    /** A time, in seconds. */
    static String seconds(Duration time) {
        return share(time.toMillis() / 1000.0) + " s";
    }
}
