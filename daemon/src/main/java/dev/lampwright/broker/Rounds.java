package dev.lampwright.broker;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The outboxes of all who publish over one connection. One message is taken from each in turn, so one that publishes a lot does not delay the
 * others. Safe for many threads.
 */
final class Rounds implements Post {
    private final List<Outbox> outboxes = new ArrayList<>();
    private final Bell bell = new Bell();
    private int next;

    /**
     * Publishes what is in an outbox from now on, beginning with its retained messages.
     *
     * @param outbox the outbox; after a message is put into it, the bell here must be rung
     */
    void add(Outbox outbox) {
        outbox.again();
        synchronized (this) {
            outboxes.remove(outbox);
            outboxes.add(outbox);
        }
        bell.ring();
    }

    /** Publishes nothing more from an outbox. */
    synchronized void remove(Outbox outbox) {
        outboxes.remove(outbox);
    }

    @Override
    public synchronized void again() {
        outboxes.forEach(Outbox::again);
        bell.ring();
    }

    @Override
    public synchronized Optional<Outgoing> poll() {
        for (int tried = 0; tried < outboxes.size(); tried++) {
            next = (next + 1) % outboxes.size();
            Optional<Outgoing> message = outboxes.get(next).poll();
            if (message.isPresent()) {
                return message;
            }
        }
        return Optional.empty();
    }

    @Override
    public Bell bell() {
        return bell;
    }
}
