package dev.lampwright.broker;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.IntStream;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;

/**
 * One connection to the broker, from the attempt to make it until it ends: {@link #open}, {@link #subscribe}, {@link #awaitEnd},
 * {@link #close}, all from one thread. Messages in the outbox are published one by one, so that a slow broker gets the newest rather than a
 * queue. Each session has its own Paho client, so that a stuck one delays nothing. Soon after {@link #close} no thread is left, except one
 * that is still waiting for a name server.
 */
final class BrokerSession implements AutoCloseable {
    /** At least once. Busy brokers drop "at most once" first, and a fault may be published only once. A duplicate message does no harm. */
    private static final int QOS = 1;

    /**
     * At most once, for what we publish. The broker gets it as long as the connection lives, and the next connection starts with everything
     * retained; so nothing depends on an answer that a broker may not give.
     */
    private static final int OUTGOING_QOS = 0;

    private static final int REFUSED = 0x80;
    private static final Duration FAREWELL = Duration.ofMillis(300);
    private static final Duration LIBRARY_START = Duration.ofSeconds(1);

    private final BrokerSocket socket;
    private final Patience patience;
    private final MessageSink sink;
    private final Post post;
    private final PahoClient client;
    private final CompletableFuture<Throwable> ended = new CompletableFuture<>();
    private volatile boolean isOver;
    private volatile boolean isWriting;

    /**
     * Prepares a connection; nothing is sent yet.
     *
     * @param clientId our name at the broker, 1 to 23 letters and digits
     * @param socket the network connection, not started
     * @param patience how long to wait
     * @param sink receives messages; not used after {@link #close} has begun
     * @param post what to publish
     * @throws BrokerException if Paho refuses the client id
     */
    BrokerSession(String clientId, BrokerSocket socket, Patience patience, MessageSink sink, Post post)
            throws BrokerException {
        this.socket = socket;
        this.patience = patience;
        this.sink = sink;
        this.post = post;
        try {
            this.client = new PahoClient(clientId, socket);
        } catch (MqttException e) {
            throw BrokerWords.failure(e);
        }
    }

    /**
     * Connects.
     *
     * @param login our credentials
     * @param will what the broker publishes when it loses the connection
     * @throws BrokerException if the broker does not accept the login in time
     * @throws InterruptedException if this thread must end
     */
    void open(Login login, Optional<Will> will) throws BrokerException, InterruptedException {
        client.setCallback(new Incoming());
        Reply connected = new Reply();
        try {
            client.connect(options(login, will), null, connected);
        } catch (MqttException e) {
            throw BrokerWords.failure(e);
        }
        try {
            await(connected, "the connection was accepted but not answered; check that an MQTT broker listens there");
        } catch (BrokerException e) {
            throw BrokerWords.failureToOpen(e, socket.isSecure());
        }
    }

    private MqttConnectOptions options(Login login, Optional<Will> will) {
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
        options.setCleanSession(true);
        options.setKeepAliveInterval(Math.toIntExact(patience.keepAlive().toSeconds()));
        login.username().map(PahoText::of).ifPresent(options::setUserName);
        login.password().map(PahoText::of).ifPresent(options::setPassword);
        will.ifPresent(last ->
                options.setWill(PahoText.of(last.topic()), last.lost().getBytes(StandardCharsets.UTF_8), QOS, true));
        return options;
    }

    /**
     * Subscribes.
     *
     * @param topicFilters the topic filters, at least one
     * @return those that the broker refused
     * @throws BrokerException if the broker does not answer in time, or the connection ends
     * @throws InterruptedException if this thread must end
     */
    List<String> subscribe(List<String> topicFilters) throws BrokerException, InterruptedException {
        int[] qos = new int[topicFilters.size()];
        Arrays.fill(qos, QOS);
        Reply subscribed = new Reply();
        try {
            client.subscribe(topicFilters.stream().map(PahoText::of).toArray(String[]::new), qos, null, subscribed);
        } catch (MqttException e) {
            throw BrokerWords.failure(e);
        }
        await(subscribed, "the subscription was not answered; check the broker");
        return refused(topicFilters, subscribed.join().getGrantedQos());
    }

    /**
     * Ends subscriptions.
     *
     * @param topicFilters of which, at least one
     * @throws BrokerException if the broker does not answer in time, or the connection ends
     * @throws InterruptedException if this thread is to end
     */
    void unsubscribe(List<String> topicFilters) throws BrokerException, InterruptedException {
        Reply ended = new Reply();
        try {
            client.unsubscribe(topicFilters.stream().map(PahoText::of).toArray(String[]::new), null, ended);
        } catch (MqttException e) {
            throw BrokerWords.failure(e);
        }
        await(ended, "the end of a subscription was not answered; check the broker");
    }

    private static List<String> refused(List<String> topicFilters, int[] granted) throws BrokerException {
        if (granted.length != topicFilters.size()) {
            throw new BrokerException(
                    "the answer to the subscription was wrong; check that an MQTT broker listens there");
        }
        return IntStream.range(0, granted.length)
                .filter(i -> granted[i] == REFUSED)
                .mapToObj(topicFilters::get)
                .toList();
    }

    private void await(Reply answer, String ifLate) throws BrokerException, InterruptedException {
        try {
            CompletableFuture.anyOf(answer, ended).get(patience.answer().toNanos(), TimeUnit.NANOSECONDS);
        } catch (TimeoutException e) {
            throw new BrokerException(ifLate, e);
        } catch (ExecutionException e) {
            throw BrokerWords.failure(e.getCause());
        }
        if (ended.isDone()) {
            throw BrokerWords.failure(ended.join());
        }
    }

    /**
     * Keeps the connection alive, publishes what is put into the outbox, and keeps to the subscriptions, until the connection ends.
     *
     * @param subscriptions looked at whenever the outbox rings, and once for each ping
     * @return why it ended
     * @throws BrokerException if it ends because the broker does not answer to a subscription
     * @throws InterruptedException if this thread is to end
     */
    BrokerException awaitEnd(Subscriptions subscriptions) throws BrokerException, InterruptedException {
        Deadline nextPing = Deadline.in(patience.ping());
        while (!ended.isDone()) {
            if (!isWriting) {
                publishNext();
            }
            subscriptions.follow(this);
            post.bell().await(nextPing.left());
            if (nextPing.isPast()) {
                pingIfQuiet();
                nextPing = Deadline.in(patience.ping());
            }
        }
        return BrokerWords.failure(ended.join());
    }

    /** Publishes the next message, and returns whether there was one. */
    private boolean publishNext() {
        Optional<Outgoing> next = post.poll();
        next.ifPresent(this::publish);
        return next.isPresent();
    }

    private void publish(Outgoing message) {
        isWriting = true;
        try {
            client.publish(
                    PahoText.of(message.topic()),
                    message.payload(),
                    OUTGOING_QOS,
                    message.isRetained(),
                    null,
                    new Written(message));
        } catch (MqttException e) {
            end(e);
        }
    }

    private void pingIfQuiet() {
        try {
            client.checkPing(null, null);
        } catch (MqttException e) {
            end(e);
        }
    }

    /**
     * Gives up the connection; may be called from any thread.
     *
     * @param reason the reason
     */
    void end(Throwable reason) {
        ended.complete(reason);
        post.bell().ring();
    }

    /**
     * Publishes what is waiting in the outbox, if that is quick, and ends the connection in any state, with a goodbye to the broker if that
     * is quick. After this Paho's threads end by themselves. Paho's own {@code close} is not called: it frees nothing, and disturbs the
     * threads that are still ending.
     */
    @Override
    public void close() {
        isOver = true;
        boolean isHealthy = client.isConnected() && !ended.isDone();
        if (!isHealthy) {
            socket.abort();
        }
        try {
            if (isHealthy) {
                publishRest();
            }
            if (socket.awaitSpoken(LIBRARY_START)) {
                client.disconnectForcibly(0, FAREWELL.toMillis(), isHealthy);
            }
        } catch (MqttException e) {
            // The connection is gone either way.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            socket.abort();
        }
    }

    private void publishRest() throws InterruptedException {
        Deadline deadline = Deadline.in(FAREWELL);
        while ((isWriting || publishNext()) && !deadline.isPast()) {
            post.bell().await(deadline.left());
        }
    }

    /** A point in monotonic time, as given by {@link System#nanoTime}. */
    private record Deadline(long nanos) {
        static Deadline in(Duration wait) {
            return new Deadline(System.nanoTime() + wait.toNanos());
        }

        boolean isPast() {
            return nanos - System.nanoTime() <= 0;
        }

        /** The time until then; not positive once it has passed. */
        Duration left() {
            return Duration.ofNanos(nanos - System.nanoTime());
        }
    }

    /** The broker's reply to one request, as Paho reports it: the finished token, or what went wrong. */
    private static final class Reply extends CompletableFuture<IMqttToken> implements IMqttActionListener {
        @Override
        public void onSuccess(IMqttToken token) {
            complete(token);
        }

        @Override
        public void onFailure(IMqttToken token, Throwable cause) {
            completeExceptionally(cause);
        }
    }

    /** What Paho reports about a message that is being published. */
    private final class Written implements IMqttActionListener {
        private final Outgoing message;

        Written(Outgoing message) {
            this.message = message;
        }

        @Override
        public void onSuccess(IMqttToken token) {
            isWriting = false;
            message.written();
            post.bell().ring();
        }

        @Override
        public void onFailure(IMqttToken token, Throwable cause) {
            end(cause);
        }
    }

    /** What Paho reports. */
    private final class Incoming implements MqttCallback {
        @Override
        public void messageArrived(String topic, MqttMessage message) {
            if (!isOver && !topic.equals(PahoText.TOO_LONG)) {
                sink.heard(PahoText.plain(topic), message.getPayload(), message.isRetained());
            }
        }

        @Override
        public void connectionLost(Throwable cause) {
            end(cause);
        }

        @Override
        public void deliveryComplete(IMqttDeliveryToken token) {}
    }
}
