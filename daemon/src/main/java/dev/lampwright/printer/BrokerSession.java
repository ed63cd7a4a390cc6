package dev.lampwright.printer;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.IntStream;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;

/**
 * One connection to the broker, from the attempt to make it until it ends: {@link #open}, {@link #subscribe},
 * {@link #awaitEnd}, {@link #close}, all from one thread. Each has a Paho client of its own, so that one that is stuck holds up
 * nothing. Soon after {@link #close} no thread is left, but for one that still waits for a name server.
 */
final class BrokerSession implements AutoCloseable {
    /**
     * At least once. At most once is what brokers drop first when they are busy, and a fault may be published only once. A
     * message that comes twice does no harm.
     */
    private static final int QOS = 1;

    private static final int REFUSED = 0x80;
    private static final Duration FAREWELL = Duration.ofMillis(300);
    private static final Duration LIBRARY_START = Duration.ofSeconds(1);

    private final BrokerSocket socket;
    private final Patience patience;
    private final MessageSink sink;
    private final PahoClient client;
    private final CompletableFuture<Throwable> ended = new CompletableFuture<>();
    private volatile boolean isOver;

    /**
     * Prepares a connection; nothing is sent yet.
     *
     * @param clientId what to be called at the broker, 1 to 23 letters and digits
     * @param socket the network connection, not started
     * @param patience how long to wait
     * @param sink where messages go; not used after {@link #close} has begun
     * @throws BrokerException if Paho refuses the client id
     */
    BrokerSession(String clientId, BrokerSocket socket, Patience patience, MessageSink sink) throws BrokerException {
        this.socket = socket;
        this.patience = patience;
        this.sink = sink;
        try {
            this.client = new PahoClient(clientId, socket);
        } catch (MqttException e) {
            throw BrokerWords.failure(e);
        }
    }

    /**
     * Connects.
     *
     * @param login what to show the broker
     * @throws BrokerException if the broker does not let us in, in time
     * @throws InterruptedException if this thread is to end
     */
    void open(Login login) throws BrokerException, InterruptedException {
        client.setCallback(new Incoming());
        Answer connected = new Answer();
        try {
            client.connect(options(login), null, connected);
        } catch (MqttException e) {
            throw BrokerWords.failure(e);
        }
        await(connected, "the connection was taken but not answered; check that it is MQTT that listens there");
    }

    private MqttConnectOptions options(Login login) {
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
        options.setCleanSession(true);
        options.setKeepAliveInterval(Math.toIntExact(patience.keepAlive().toSeconds()));
        login.username().ifPresent(options::setUserName);
        login.password().ifPresent(options::setPassword);
        return options;
    }

    /**
     * Subscribes.
     *
     * @param topicFilters what to, at least one
     * @return those that the broker refused
     * @throws BrokerException if the broker does not answer in time, or the connection ends
     * @throws InterruptedException if this thread is to end
     */
    List<String> subscribe(List<String> topicFilters) throws BrokerException, InterruptedException {
        int[] qos = new int[topicFilters.size()];
        Arrays.fill(qos, QOS);
        Answer subscribed = new Answer();
        try {
            client.subscribe(topicFilters.toArray(String[]::new), qos, null, subscribed);
        } catch (MqttException e) {
            throw BrokerWords.failure(e);
        }
        await(subscribed, "the subscription was not answered; look at the broker");
        return refused(topicFilters, subscribed.join().getGrantedQos());
    }

    private static List<String> refused(List<String> topicFilters, int[] granted) throws BrokerException {
        if (granted.length != topicFilters.size()) {
            throw new BrokerException(
                    "the subscription was answered wrongly; check that it is MQTT that listens there");
        }
        return IntStream.range(0, granted.length)
                .filter(i -> granted[i] == REFUSED)
                .mapToObj(topicFilters::get)
                .toList();
    }

    private void await(Answer answer, String ifLate) throws BrokerException, InterruptedException {
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
     * Keeps the connection alive until it ends.
     *
     * @return why it ended
     * @throws InterruptedException if this thread is to end
     */
    BrokerException awaitEnd() throws InterruptedException {
        while (true) {
            try {
                return BrokerWords.failure(ended.get(patience.ping().toNanos(), TimeUnit.NANOSECONDS));
            } catch (TimeoutException e) {
                pingIfQuiet();
            } catch (ExecutionException e) {
                return BrokerWords.failure(e);
            }
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
     * Gives the connection up; callable from any thread.
     *
     * @param reason why
     */
    void end(Throwable reason) {
        ended.complete(reason);
    }

    /**
     * Ends the connection whatever state it is in, and tells the broker if that is quick. After this Paho's threads end by
     * themselves. Paho's own {@code close} is not called: it frees nothing, and trips up the threads that are still ending.
     */
    @Override
    public void close() {
        isOver = true;
        boolean isHealthy = client.isConnected() && !ended.isDone();
        if (!isHealthy) {
            socket.abort();
        }
        try {
            if (socket.awaitSpoken(LIBRARY_START)) {
                client.disconnectForcibly(0, FAREWELL.toMillis(), isHealthy);
            }
        } catch (MqttException e) {
            // It is gone either way.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            socket.abort();
        }
    }

    /** What Paho tells. */
    private final class Incoming implements MqttCallback {
        @Override
        public void messageArrived(String topic, MqttMessage message) {
            if (!isOver) {
                sink.take(topic, message.getPayload(), message.isRetained());
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
