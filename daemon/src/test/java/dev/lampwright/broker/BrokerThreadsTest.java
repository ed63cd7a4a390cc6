package dev.lampwright.broker;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.testing.Alder;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import java.lang.ref.WeakReference;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.function.BiConsumer;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.internal.ClientComms;
import org.eclipse.paho.client.mqttv3.internal.ClientState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class BrokerThreadsTest {
    private final List<String> dead = new CopyOnWriteArrayList<>();
    private final BiConsumer<Thread, Throwable> dying = this::note;
    private final BrokerThreads threads = new BrokerThreads(dying);

    private void note(Thread thread, Throwable failure) {
        dead.add(thread.getName() + " " + failure.getMessage());
    }

    private Thread start(String name, Runnable work) {
        Thread thread = new Thread(threads, work, name);
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private static void awaitWaiting(Thread thread) {
        Await.until(thread.getName() + " to wait", () -> thread.getState() == Thread.State.WAITING);
    }

    /** The state in which Paho's sending thread is left when it misses the end of its connection: it waits for work without one. */
    private static void send(PahoClient client) {
        try {
            Field comms = MqttAsyncClient.class.getDeclaredField("comms");
            comms.setAccessible(true);
            ClientState state = ((ClientComms) comms.get(client)).getClientState();
            Method begin = ClientState.class.getDeclaredMethod("setMaxInflight", int.class);
            begin.setAccessible(true);
            begin.invoke(state, 1);
            Method get = ClientState.class.getDeclaredMethod("get");
            get.setAccessible(true);
            get.invoke(state);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError(e.getMessage(), e);
        }
    }

    @Test
    void aSenderThatMissedItsEndIsEnded() throws Exception {
        BrokerSocket socket =
                new BrokerSocket("127.0.0.1", 1883, Optional.empty(), Duration.ofSeconds(1), BrokerClient.MOST_BYTES);
        PahoClient client = new PahoClient("lampwright", socket);
        Thread sender = start("MQTT Snd: lampwright", () -> send(client));
        awaitWaiting(sender);
        threads.endSenders();
        sender.join(60_000);
        assertEquals(List.of(), dead);
    }

    @Test
    void othersAreLeftInPeace() throws InterruptedException {
        CountDownLatch latch = new CountDownLatch(1);
        Thread caller = start("MQTT Call: lampwright", () -> {
            try {
                latch.await();
            } catch (InterruptedException e) {
                throw new IllegalStateException("interrupted", e);
            }
        });
        awaitWaiting(caller);
        threads.endSenders();
        assertFalse(caller.isInterrupted());
        latch.countDown();
        caller.join(60_000);
        assertEquals(List.of(), dead);
    }

    /** The thread group of a finished client stays with its parent group, on Java 17 for ever. */
    @Test
    void aClientThatIsOverIsNotKept() throws InterruptedException {
        URI nowhere = URI.create("mqtt://127.0.0.1:" + FreePort.find());
        BrokerClient client =
                new BrokerClient(Alder.at(nowhere), List.of("#"), (topic, payload, retained) -> {}, Optional.empty());
        WeakReference<BrokerClient> gone = new WeakReference<>(client);
        client.start();
        client.close();
        client = null;
        Await.until("the client to be collected", () -> {
            System.gc();
            return gone.get() == null;
        });
    }

    @Test
    void deathsAreTold() throws InterruptedException {
        start("MQTT Rec: lampwright", () -> {
                    throw new IllegalStateException("unexpected");
                })
                .join();
        assertTrue(dead.contains("MQTT Rec: lampwright unexpected"), dead.toString());
    }
}
