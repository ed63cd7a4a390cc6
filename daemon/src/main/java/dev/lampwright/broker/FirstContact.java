package dev.lampwright.broker;

import java.net.URI;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** For a command with a person waiting: either it connects soon, or it fails and says why. */
public final class FirstContact {
    private static final Duration LONGEST = Duration.ofSeconds(8);
    /** A broker that refuses may only be starting; after this long its refusal is final. */
    private static final Duration TO_TRY_AGAIN = Duration.ofSeconds(2);

    private static final long LOOK_EVERY_MS = 50;

    private FirstContact() {}

    /**
     * Waits until a started client is connected.
     *
     * @param client the client
     * @param url its broker, for the message
     * @param stopped ends the waiting once it has been counted down
     * @param meanwhile called about twenty times a second
     * @return false if it was stopped
     * @throws UnreachedException if the broker does not accept the login
     * @throws InterruptedException if the thread is interrupted
     */
    public static boolean await(BrokerClient client, URI url, CountDownLatch stopped, Runnable meanwhile)
            throws UnreachedException, InterruptedException {
        long start = System.nanoTime();
        while (client.state().phase() != BrokerState.Phase.CONNECTED) {
            BrokerState state = client.state();
            long nanos = System.nanoTime() - start;
            boolean refused = state.phase() == BrokerState.Phase.LOST && nanos > TO_TRY_AGAIN.toNanos();
            if (refused || nanos > LONGEST.toNanos()) {
                throw refusal(url, state);
            }
            if (stopped.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
                return false;
            }
            meanwhile.run();
        }
        return true;
    }

    private static UnreachedException refusal(URI url, BrokerState state) {
        return state.reason().isEmpty()
                ? new UnreachedException("broker_silent", url, "does not answer; check its address and its port")
                : new UnreachedException(state.code(), url, state.reason());
    }
}
