package dev.lampwright.cli;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;

/** A program that, when asked to end by a signal, takes as long as requested, or for ever. */
final class GracefulShutdownProbe {
    private GracefulShutdownProbe() {}

    /**
     * Runs until it is asked to end twice, or for too long.
     *
     * @param args how long it may take to end, in ms
     */
    public static void main(String[] args) throws InterruptedException {
        GracefulShutdown.of(Duration.ofMillis(Long.parseLong(args[0])), () -> System.out.println("asked"), () -> {
            System.out.println("ready");
            new CountDownLatch(1).await();
        });
    }
}
