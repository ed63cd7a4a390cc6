package dev.lampwright.desk;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;

/** Values as an answer says them. */
final class Spoken {
    /** What ends something that was asked for. */
    static final String AUTO = "auto";

    static final String ON = "on";
    static final String OFF = "off";

    private Spoken() {}

    /** A share, in thousandths at the finest. */
    static String share(double share) {
        return BigDecimal.valueOf(share)
                .setScale(3, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** That something is given back to what the configuration says. */
    static String automatic(String what) {
        return what + " automatic";
    }

    /** A time, in seconds. */
    static String seconds(Duration time) {
        return share(time.toMillis() / 1000.0) + " s";
    }
}
