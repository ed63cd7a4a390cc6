package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class WrongTokensTest {
    private static final InetAddress FROM = InetAddress.getLoopbackAddress();

    private final WrongTokens wrong = new WrongTokens();

    private void tries(int count, long nanos) {
        for (int i = 0; i < count; i++) {
            wrong.wrong(FROM, nanos);
        }
    }

    @Test
    void aFewAreFree() {
        tries(4, 0);
        assertEquals(0, wrong.waitSeconds(FROM, 0));
    }

    @Test
    void theWaitDoublesUpToAnEnd() {
        tries(5, 0);
        assertEquals(5, wrong.waitSeconds(FROM, 0));
        assertEquals(1, wrong.waitSeconds(FROM, TimeUnit.SECONDS.toNanos(4) + 1));
        assertEquals(0, wrong.waitSeconds(FROM, TimeUnit.SECONDS.toNanos(5)));
        tries(1, 0);
        assertEquals(10, wrong.waitSeconds(FROM, 0));
        tries(100, 0);
        assertEquals(320, wrong.waitSeconds(FROM, 0));
    }

    @Test
    void theRightOneEndsIt() {
        tries(9, 0);
        wrong.right(FROM);
        assertEquals(0, wrong.waitSeconds(FROM, 0));
    }

    @Test
    void aLongCalmEndsItToo() {
        tries(9, 0);
        tries(1, TimeUnit.MINUTES.toNanos(15));
        assertEquals(0, wrong.waitSeconds(FROM, TimeUnit.MINUTES.toNanos(15)));
    }

    @Test
    void addressesBeyondCountAreForgottenNotGathered() throws UnknownHostException {
        tries(9, 0);
        for (int i = 0; i < 256; i++) {
            wrong.wrong(InetAddress.getByAddress(new byte[] {10, 0, 0, (byte) i}), 0);
        }
        assertEquals(0, wrong.waitSeconds(FROM, 0));
    }
}
