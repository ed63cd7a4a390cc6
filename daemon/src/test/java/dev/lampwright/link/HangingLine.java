package dev.lampwright.link;

import java.util.concurrent.CountDownLatch;

/** A line whose read does not return, whatever is done about it. */
final class HangingLine implements Line {
    private final CountDownLatch hanging = new CountDownLatch(1);
    private final CountDownLatch released = new CountDownLatch(1);

    boolean hangs() {
        return hanging.getCount() == 0;
    }

    void letGo() {
        released.countDown();
    }

    @Override
    public void open() {}

    @Override
    public int read(byte[] into, int timeoutMillis) throws LineException {
        hanging.countDown();
        boolean interrupted = false;
        while (released.getCount() > 0) {
            try {
                released.await();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        throw new LineException("released");
    }

    @Override
    public void write(byte[] bytes, int count) {}

    @Override
    public void close() {}

    @Override
    public int baud() {
        return 500_000;
    }

    @Override
    public String name() {
        return "hanging";
    }
}
