package dev.lampwright.page;

import java.net.InetAddress;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** Determines how long an address that has sent wrong tokens must wait, longer each time. Safe for many threads. */
final class WrongTokens {
    private static final int FREE = 5;
    private static final int MOST_ADDRESSES = 256;
    private static final long SHORTEST_WAIT_S = 5;
    private static final int MOST_DOUBLINGS = 6;
    private static final long FORGOTTEN_NANOS = TimeUnit.MINUTES.toNanos(15);

    private final Map<InetAddress, Tries> tries = new LinkedHashMap<>();

    private record Tries(int count, long atNanos) {
        long waitNanos() {
            return count < FREE
                    ? 0
                    : TimeUnit.SECONDS.toNanos(SHORTEST_WAIT_S << Math.min(MOST_DOUBLINGS, count - FREE));
        }
    }

    /**
     * How long an address must wait before it may try again.
     *
     * @param address the address
     * @param nowNanos the time
     * @return s, rounded up; 0 if it may try
     */
    synchronized long waitSeconds(InetAddress address, long nowNanos) {
        Tries of = tries.get(address);
        long left = of == null ? 0 : of.waitNanos() - (nowNanos - of.atNanos);
        return left <= 0 ? 0 : (left + TimeUnit.SECONDS.toNanos(1) - 1) / TimeUnit.SECONDS.toNanos(1);
    }

    /**
     * Records that an address has sent a wrong token.
     *
     * @param address the address
     * @param nowNanos the time
     */
    synchronized void wrong(InetAddress address, long nowNanos) {
        Tries before = tries.remove(address);
        boolean counts = before != null && nowNanos - before.atNanos < FORGOTTEN_NANOS;
        if (tries.size() == MOST_ADDRESSES) {
            tries.remove(tries.keySet().iterator().next());
        }
        tries.put(address, new Tries(counts ? before.count + 1 : 1, nowNanos));
    }

    /** Records that an address has sent the right token. */
    synchronized void right(InetAddress address) {
        tries.remove(address);
    }
}
