package dev.lampwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;

/**
 * A real Mosquitto on a free loopback port, with its own folder, which is deleted with it. It keeps nothing from one start to the next.
 * Needs the Debian packages {@code mosquitto} and {@code mosquitto-clients}.
 */
public final class Mosquitto implements AutoCloseable {
    private static final Duration DEADLINE = Duration.ofSeconds(20);

    /** If run by root, Mosquitto would switch to another user, who must not read the folder. */
    private static final String USER = System.getProperty("user.name");

    private final int port;
    private final Path folder;
    private final Optional<Account> account;
    private final Optional<TestCertificates> certificates;
    private final List<String> more;
    private Process process;

    /**
     * The account that may log in.
     *
     * @param username the name
     * @param password the password
     */
    public record Account(String username, String password) {}

    private Mosquitto(int port, Optional<Account> account, Optional<TestCertificates> certificates, List<String> more) {
        this.port = port;
        this.more = more;
        this.account = account;
        this.certificates = certificates;
        this.folder = newFolder();
    }

    /**
     * Starts one that accepts everybody.
     *
     * @return the broker, listening
     */
    public static Mosquitto start() {
        return startOn(FreePort.find());
    }

    /**
     * Starts one that accepts everybody, on a port found before.
     *
     * @param port a free port
     * @return the broker, listening
     */
    public static Mosquitto startOn(int port) {
        return started(new Mosquitto(port, Optional.empty(), Optional.empty(), List.of()));
    }

    /**
     * Starts one that accepts one account.
     *
     * @param account the account
     * @return the broker, listening
     */
    public static Mosquitto startWith(Account account) {
        return started(new Mosquitto(FreePort.find(), Optional.of(account), Optional.empty(), List.of()));
    }

    /**
     * Starts one that accepts everybody.
     *
     * @param more further lines of its configuration
     * @return the broker, listening
     */
    public static Mosquitto startWith(List<String> more) {
        return started(new Mosquitto(FreePort.find(), Optional.empty(), Optional.empty(), more));
    }

    /**
     * Starts one with TLS that accepts everybody.
     *
     * @param certificates what it presents
     * @return the broker, listening
     */
    public static Mosquitto startWith(TestCertificates certificates) {
        return started(new Mosquitto(FreePort.find(), Optional.empty(), Optional.of(certificates), List.of()));
    }

    /**
     * Starts one with TLS that accepts clients with certificates from the same authority.
     *
     * @param certificates what it presents
     * @return the broker, listening
     */
    public static Mosquitto askingForCertificates(TestCertificates certificates) {
        List<String> asking = List.of("require_certificate true", "cafile " + certificates.authority());
        return started(new Mosquitto(FreePort.find(), Optional.empty(), Optional.of(certificates), asking));
    }

    /**
     * Starts one with a shipped configuration, but on a free port and in its own folder.
     *
     * @param shipped folder with {@code lampwright.conf}
     * @param accessList the file from the same folder that is used as {@code lampwright.acl}
     * @param accounts who may log in
     * @return the broker, listening
     */
    public static Mosquitto asShipped(Path shipped, String accessList, List<Account> accounts) {
        Mosquitto mosquitto = new Mosquitto(FreePort.find(), Optional.empty(), Optional.empty(), List.of());
        try {
            Files.copy(shipped.resolve(accessList), mosquitto.folder.resolve("lampwright.acl"));
            mosquitto.passwords(mosquitto.folder.resolve("lampwright.passwords"), accounts);
            String text = Files.readString(shipped.resolve("lampwright.conf"))
                    .replace("listener 1883", "listener " + mosquitto.port)
                    .replace("/etc/mosquitto", mosquitto.folder.toString());
            Files.writeString(mosquitto.folder.resolve("mosquitto.conf"), text + "\nuser " + USER + "\n");
            mosquitto.restart();
            return mosquitto;
        } catch (IOException e) {
            mosquitto.close();
            throw new UncheckedIOException(e);
        }
    }

    private static Mosquitto started(Mosquitto mosquitto) {
        try {
            mosquitto.configure();
            mosquitto.restart();
            return mosquitto;
        } catch (IOException e) {
            mosquitto.close();
            throw new UncheckedIOException(e);
        }
    }

    private static Path newFolder() {
        try {
            return Files.createTempDirectory("lampwright-mosquitto");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void configure() throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add("listener " + port + " 127.0.0.1");
        lines.add("persistence false");
        lines.add("allow_anonymous " + account.isEmpty());
        lines.add("log_dest stdout");
        lines.add("user " + USER);
        if (account.isPresent()) {
            Path file = folder.resolve("passwords");
            passwords(file, List.of(account.get()));
            lines.add("password_file " + file);
        }
        if (certificates.isPresent()) {
            lines.add("certfile " + certificates.get().certificate());
            lines.add("keyfile " + certificates.get().key());
        }
        lines.addAll(more);
        Files.write(folder.resolve("mosquitto.conf"), lines);
    }

    private void passwords(Path file, List<Account> accounts) throws IOException {
        Files.createFile(file);
        for (Account one : accounts) {
            Tool.run(List.of("mosquitto_passwd", "-b", file.toString(), one.username(), one.password()), "mosquitto");
        }
    }

    /**
     * Its address.
     *
     * @return {@code mqtt://127.0.0.1:port}, or {@code mqtts://localhost:port} with TLS
     */
    public URI url() {
        return URI.create(certificates.isPresent() ? "mqtts://localhost:" + port : "mqtt://127.0.0.1:" + port);
    }

    /**
     * Its port.
     *
     * @return the number of its port
     */
    public int port() {
        return port;
    }

    /**
     * Publishes at QoS 1 and waits until the broker has accepted it.
     *
     * @param topic the topic
     * @param payload the payload, as UTF-8
     * @param retain whether the broker retains it
     */
    public void publish(String topic, String payload, boolean retain) {
        publish(topic, payload.getBytes(StandardCharsets.UTF_8), retain);
    }

    /**
     * Publishes at QoS 1 and waits until the broker has accepted it.
     *
     * @param topic the topic
     * @param payload the payload
     * @param retain whether the broker retains it
     */
    public void publish(String topic, byte[] payload, boolean retain) {
        List<String> command = new ArrayList<>(
                List.of("mosquitto_pub", "-p", "" + port, "-q", "1", "-t", topic, "-f", payloadFile(payload)));
        if (retain) {
            command.add("-r");
        }
        account.ifPresent(only -> command.addAll(List.of("-u", only.username(), "-P", only.password())));
        certificates.ifPresent(shown -> command.addAll(identity(shown)));
        command.addAll(List.of("-h", url().getHost()));
        Tool.run(command, "mosquitto-clients");
    }

    /** The broker's own certificate also serves as a client's. */
    private static List<String> identity(TestCertificates certificates) {
        return List.of(
                "--cafile",
                certificates.authority().toString(),
                "--cert",
                certificates.certificate().toString(),
                "--key",
                certificates.key().toString());
    }

    /**
     * Publishes many messages at QoS 1 as fast as the broker accepts them, and waits until it has accepted all.
     *
     * @param topic the topic
     * @param payloads the payloads, as UTF-8, none with a line break
     */
    public void publishAll(String topic, List<String> payloads) {
        String file = payloadFile(String.join("\n", payloads).getBytes(StandardCharsets.UTF_8));
        List<String> command = List.of("mosquitto_pub", "-p", "" + port, "-q", "1", "-t", topic, "-l");
        Tool.run(List.of("sh", "-c", String.join(" ", command) + " < " + file), "mosquitto-clients");
    }

    /**
     * Publishes a retained message at QoS 1 on a topic that does not depend on the locale.
     *
     * @param escaped the topic, each byte of UTF-8 beyond ASCII as a backslash and three octal digits
     * @param payload the payload, letters and digits
     */
    public void publishAtEscaped(String escaped, String payload) {
        String topic = "\"$(printf '" + escaped + "')\"";
        String command = "mosquitto_pub -p " + port + " -q 1 -r -t " + topic + " -m " + payload;
        Tool.run(List.of("sh", "-c", command), "mosquitto-clients");
    }

    /**
     * Subscribes and returns the first message: a retained one, or else the next that is published.
     *
     * @param topic the topic
     * @return the payload, as UTF-8, without a final line break
     * @throws AssertionError if none comes within twenty seconds
     */
    public String read(String topic) {
        List<String> command = List.of("mosquitto_sub", "-h", "127.0.0.1", "-p", "" + port, "-t", topic);
        List<String> once = List.of("-C", "1", "-W", "" + DEADLINE.toSeconds());
        return Tool.run(Stream.concat(command.stream(), once.stream()).toList(), "mosquitto-clients")
                .strip();
    }

    /**
     * Publishes many messages at QoS 1, one after the other at an even pace, and waits until the broker has accepted all.
     *
     * @param topic the topic
     * @param payloads the payloads, as UTF-8, none with a line break
     * @param pace time from one to the next
     */
    public void publishPaced(String topic, List<String> payloads, Duration pace) {
        List<String> command = List.of("mosquitto_pub", "-p", "" + port, "-q", "1", "-t", topic, "-l");
        try {
            Process publisher = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            try (Writer lines = publisher.outputWriter(StandardCharsets.UTF_8)) {
                for (String payload : payloads) {
                    lines.write(payload + "\n");
                    lines.flush();
                    LockSupport.parkNanos(pace.toNanos());
                }
            }
            if (!publisher.waitFor(DEADLINE.toSeconds(), TimeUnit.SECONDS)) {
                throw new AssertionError("mosquitto_pub does not end");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while mosquitto_pub was publishing", e);
        }
    }

    private String payloadFile(byte[] payload) {
        try {
            return Files.write(folder.resolve("payload"), payload).toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Ends it like a power cut (SIGKILL), and waits until it is gone. */
    public void kill() {
        process.destroyForcibly();
        try {
            if (!process.waitFor(DEADLINE.toSeconds(), TimeUnit.SECONDS)) {
                throw new AssertionError("mosquitto does not die");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while mosquitto was ending", e);
        }
    }

    /** Stops it (SIGSTOP): its connections stay, and nothing is answered. */
    public void freeze() {
        signal("STOP");
    }

    /** Continues it (SIGCONT). */
    public void thaw() {
        signal("CONT");
    }

    private void signal(String name) {
        Tool.run(List.of("kill", "-" + name, Long.toString(process.pid())), "procps");
    }

    /** Starts it again on the same port, having killed it if it ran. It has forgotten all retained messages. */
    public void restart() {
        if (process != null) {
            kill();
        }
        Path log = folder.resolve("log");
        process = Tool.start(
                List.of(program(), "-c", folder.resolve("mosquitto.conf").toString()), log, "mosquitto");
        Await.until("mosquitto to listen on port " + port, DEADLINE, () -> isUp(log));
    }

    private static String program() {
        return Files.isExecutable(Path.of("/usr/sbin/mosquitto")) ? "/usr/sbin/mosquitto" : "mosquitto";
    }

    private boolean isUp(Path log) {
        if (!process.isAlive()) {
            throw new AssertionError("mosquitto has ended: " + Tool.text(log));
        }
        return FreePort.isListening(port);
    }

    /** Kills it and removes its folder. */
    @Override
    public void close() {
        if (process != null) {
            kill();
        }
        try {
            Folders.delete(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
