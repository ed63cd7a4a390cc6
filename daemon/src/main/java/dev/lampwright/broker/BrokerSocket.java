package dev.lampwright.broker;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLException;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;
import org.eclipse.paho.client.mqttv3.internal.NetworkModule;

/**
 * The network connection that one Paho client works on.
 *
 * <p>Paho 1.2.5 starts a reading, a sending and a calling thread one after the other, and waits for ever until it has seen each running; if
 * one ends before that, the waiting thread is left behind for ever. So nothing is read, and no end of the stream reported, before Paho has
 * sent its first packet, which it does when all its threads run.
 */
final class BrokerSocket implements NetworkModule {
    private final String host;
    private final int port;
    private final Optional<SSLSocketFactory> tls;
    private final Duration patience;
    private final int mostPacketBytes;
    private final CountDownLatch spoken = new CountDownLatch(1);
    private boolean aborted;
    private Socket raw;
    private Socket socket;

    /**
     * Does nothing yet.
     *
     * @param host name or address of the broker's host
     * @param port its TCP port
     * @param tls creates the TLS socket; empty for plain TCP
     * @param patience how long to wait for each of the host's addresses
     * @param mostPacketBytes packets are cut to this length
     */
    BrokerSocket(String host, int port, Optional<SSLSocketFactory> tls, Duration patience, int mostPacketBytes) {
        this.host = host;
        this.port = port;
        this.tls = tls;
        this.patience = patience;
        this.mostPacketBytes = mostPacketBytes;
    }

    /** Whether it uses TLS. */
    boolean isSecure() {
        return tls.isPresent();
    }

    /**
     * Connects without Paho.
     *
     * @param answer how long each read may take from now on, beginning with those of a TLS handshake
     * @return the connection, with TLS if that is used
     * @throws IOException if it cannot be made
     */
    Socket open(Duration answer) throws IOException {
        Socket connected = connect();
        connected.setSoTimeout(Math.toIntExact(answer.toMillis()));
        return tls.isPresent() ? secure(tls.get(), connected) : connected;
    }

    @Override
    public void start() throws IOException {
        Socket connected = connect();
        socket = tls.isPresent() ? secure(tls.get(), connected) : connected;
    }

    private Socket connect() throws IOException {
        IOException last = new SocketException("no address");
        for (InetAddress address : InetAddress.getAllByName(host)) {
            try {
                Socket candidate = keep(new Socket());
                candidate.setTcpNoDelay(true);
                candidate.connect(new InetSocketAddress(address, port), Math.toIntExact(patience.toMillis()));
                return candidate;
            } catch (IOException e) {
                last = e;
                close();
            }
        }
        throw last;
    }

    private Socket secure(SSLSocketFactory factory, Socket connected) throws IOException {
        SSLSocket secured = (SSLSocket) factory.createSocket(connected, host, port, true);
        SSLParameters parameters = secured.getSSLParameters();
        parameters.setEndpointIdentificationAlgorithm("HTTPS");
        secured.setSSLParameters(parameters);
        shakeHands(secured);
        return secured;
    }

    private static void shakeHands(SSLSocket secured) throws IOException {
        try {
            secured.startHandshake();
        } catch (SocketException e) {
            throw new SSLException("the other end broke off the handshake", e);
        }
    }

    private synchronized Socket keep(Socket candidate) throws IOException {
        if (aborted) {
            throw new SocketException("given up");
        }
        raw = candidate;
        return candidate;
    }

    private synchronized void close() {
        try {
            if (raw != null) {
                raw.close();
            }
        } catch (IOException e) {
            // The connection is gone either way.
        }
    }

    /** Ends the connection, or the attempt to make one, immediately and from any thread. Paho then finds it ended. */
    synchronized void abort() {
        aborted = true;
        close();
    }

    /**
     * Waits until Paho has sent its first packet, or has given up.
     *
     * @param most how long to wait
     * @return whether it has; if not, it is still busy with {@link #start}
     * @throws InterruptedException if this thread must end
     */
    boolean awaitSpoken(Duration most) throws InterruptedException {
        return spoken.await(most.toNanos(), TimeUnit.NANOSECONDS);
    }

    @Override
    public void stop() {
        abort();
        spoken.countDown();
    }

    @Override
    public InputStream getInputStream() throws IOException {
        return new BrokerInput(new Listening(socket.getInputStream()), mostPacketBytes);
    }

    @Override
    public OutputStream getOutputStream() throws IOException {
        return new BrokerOutput(new Speaking(socket.getOutputStream()));
    }

    @Override
    public String getServerURI() {
        return host + ":" + port;
    }

    /** Reads nothing before something has been sent. */
    private final class Listening extends FilterInputStream {
        Listening(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            awaitFirstWord();
            return super.read();
        }

        @Override
        public int read(byte[] into, int at, int length) throws IOException {
            awaitFirstWord();
            return super.read(into, at, length);
        }

        /** Paho calls this before it reads; a broken connection must not end its reader before the first packet either. */
        @Override
        public int available() throws IOException {
            return spoken.getCount() == 0 ? super.available() : 0;
        }

        private void awaitFirstWord() throws IOException {
            try {
                spoken.await();
            } catch (InterruptedException e) {
                throw new InterruptedIOException("interrupted before the first packet was sent");
            }
        }
    }

    /** Records that something was sent, or that sending failed. */
    private final class Speaking extends OutputStream {
        private final OutputStream out;

        Speaking(OutputStream out) {
            this.out = out;
        }

        @Override
        public void write(int one) throws IOException {
            write(new byte[] {(byte) one}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int at, int length) throws IOException {
            try {
                out.write(bytes, at, length);
            } finally {
                spoken.countDown();
            }
        }

        @Override
        public void flush() throws IOException {
            out.flush();
        }
    }
}
