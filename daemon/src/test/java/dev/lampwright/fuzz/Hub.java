package dev.lampwright.fuzz;

import dev.lampwright.broker.FakeBroker;
import dev.lampwright.testing.Await;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A broker for a single client, the daemon, which behaves correctly until it is instructed to lie. When correct, it sends everything
 * retained to a new connection, answers pings, and keeps what the daemon answers.
 */
final class Hub implements AutoCloseable {
    private static final int CONNECT = 1;
    private static final int PUBLISH = 3;
    private static final int SUBSCRIBE = 8;
    private static final int PING = 12;
    private static final int PONG = 0xD0;
    private static final int MOST_ANSWERS = 1000;
    private static final String ANSWER = "lampwright/answer";

    private final FakeBroker broker;
    private final Map<String, byte[]> kept = new ConcurrentHashMap<>();
    private final Deque<String> answers = new ArrayDeque<>();
    private volatile Optional<FakeBroker.Script> lie = Optional.empty();
    private volatile FakeBroker.Peer listener;
    private long answered;

    Hub(int port) {
        broker = FakeBroker.on(port, this::play);
    }

    private void play(FakeBroker.Peer peer) throws IOException {
        Optional<FakeBroker.Script> script = lie;
        if (script.isPresent()) {
            script.get().play(peer);
        } else {
            serve(peer);
        }
    }

    private void serve(FakeBroker.Peer peer) throws IOException {
        try {
            while (true) {
                byte[] body = peer.packet();
                synchronized (peer) {
                    answer(peer, body);
                }
            }
        } finally {
            forget(peer);
        }
    }

    private synchronized void forget(FakeBroker.Peer peer) {
        listener = listener == peer ? null : listener;
    }

    private void answer(FakeBroker.Peer peer, byte[] body) throws IOException {
        switch (peer.type()) {
            case CONNECT -> peer.send(0x20, 2, 0, 0);
            case SUBSCRIBE -> subscribed(peer, body);
            case PING -> peer.send(PONG, 0);
            case PUBLISH -> take(body);
            default -> {}
        }
    }

    private void subscribed(FakeBroker.Peer peer, byte[] body) throws IOException {
        peer.suback(body);
        for (Map.Entry<String, byte[]> message : kept.entrySet()) {
            peer.publish(message.getKey(), message.getValue(), true);
        }
        listener = peer;
    }

    private synchronized void take(byte[] body) {
        int length = FakeBroker.number(body, 0);
        String topic = new String(body, 2, length, StandardCharsets.UTF_8);
        if (topic.equals(ANSWER)) {
            answered++;
            answers.add(new String(Arrays.copyOfRange(body, 2 + length, body.length), StandardCharsets.UTF_8));
            if (answers.size() > MOST_ANSWERS) {
                answers.remove();
            }
        }
    }

    /** How many answers of the daemon have come. */
    synchronized long answered() {
        return answered;
    }

    /** The newest answer. */
    synchronized String newestAnswer() {
        return answers.getLast();
    }

    /** Whether the daemon is connected and has subscribed. */
    boolean hasListener() {
        return listener != null;
    }

    /** Publishes to the daemon; lost if it is not connected. */
    void publish(String topic, byte[] payload, boolean retained) {
        FakeBroker.Peer peer = listener;
        if (peer == null) {
            return;
        }
        try {
            synchronized (peer) {
                peer.publish(topic, payload, retained);
            }
        } catch (IOException e) {
            // The client is gone, and will receive what is kept when it returns.
        }
    }

    /** Publishes to the daemon, and keeps it for every later connection. */
    void keep(String topic, String payload) {
        byte[] bytes = payload.getBytes(StandardCharsets.UTF_8);
        kept.put(topic, bytes);
        publish(topic, bytes, false);
    }

    /** Lies to the next connection, and ends the existing one. Returns when the lie has begun. */
    void lie(FakeBroker.Script script) {
        lie = Optional.of(script);
        int before = broker.connections();
        broker.hangUp();
        Await.until("the daemon to connect", () -> broker.connections() > before);
    }

    /** Is honest again. A connection that was lied to ends. */
    void beHonest() {
        if (lie.isPresent()) {
            lie = Optional.empty();
            broker.hangUp();
        }
    }

    @Override
    public void close() {
        broker.close();
    }
}
