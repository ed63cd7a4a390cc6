package dev.lampwright.broker;

import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttPingSender;
import org.eclipse.paho.client.mqttv3.internal.ClientComms;
import org.eclipse.paho.client.mqttv3.internal.NetworkModule;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A Paho client on our own network connection. It keeps nothing on disk, has no timer thread and logs nothing. */
final class PahoClient extends MqttAsyncClient {
    /** Held here because the JDK forgets the level of an unreferenced logger. Problems are reported in our own words. */
    private static final Logger LIBRARY_LOG = Logger.getLogger("org.eclipse.paho.client.mqttv3");

    static {
        LIBRARY_LOG.setLevel(Level.OFF);
    }

    private final NetworkModule socket;

    /**
     * Does not connect yet.
     *
     * @param clientId our name at the broker
     * @param socket the network connection, not started
     * @throws MqttException if Paho refuses the client id
     */
    PahoClient(String clientId, NetworkModule socket) throws MqttException {
        super("tcp://" + socket.getServerURI(), clientId, new MemoryPersistence(), new NoTimer());
        this.socket = socket;
    }

    @Override
    protected NetworkModule[] createNetworkModules(String address, MqttConnectOptions options) {
        return new NetworkModule[] {socket};
    }

    /** The user of the client calls {@link #checkPing} instead. */
    private static final class NoTimer implements MqttPingSender {
        @Override
        public void init(ClientComms comms) {}

        @Override
        public void start() {}

        @Override
        public void stop() {}

        @Override
        public void schedule(long delayInMilliseconds) {}
    }
}
