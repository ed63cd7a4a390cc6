package dev.lampwright.rig;

import com.sun.management.OperatingSystemMXBean;
import dev.lampwright.broker.Broker;
import dev.lampwright.broker.BrokerState;
import dev.lampwright.broker.Brokers;
import dev.lampwright.broker.Contact;
import dev.lampwright.broker.OwnTopics;
import dev.lampwright.broker.Patience;
import dev.lampwright.broker.SharedBrokers;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterClient;
import dev.lampwright.printer.Statuses;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.Mosquitto;
import dev.lampwright.upkeep.Crew;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Measures what messages cost a process with many rigs, and prints the figures; no test. Only the side that hears printers runs: connections to a real
 * Mosquitto, and the reading of statuses. Messages of 200 bytes of JSON come at an even pace, first on a topic that one rig wants, then on one that
 * all want by a wildcard. To be run after {@code mvn package}, from the folder {@code daemon}; the arguments are {@code shared} or {@code own} for the
 * connections, how many rigs, and how many seconds each measurement takes:
 *
 * <pre>java @../systemd/java.options @../systemd/run.options @../systemd/shop.options \
 *     -cp target/test-classes:target/lampwright.jar dev.lampwright.rig.MessageFigures shared 64 10</pre>
 */
final class MessageFigures {
    private static final int PER_SECOND = 200;
    private static final int BATCHES_PER_SECOND = 20;
    private static final int REST = 150;
    private static final long QUIET_MS = 300;
    private static final OperatingSystemMXBean SYSTEM =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private final Mosquitto mosquitto;
    private final List<PrinterClient> rigs;
    private final int seconds;

    private MessageFigures(Mosquitto mosquitto, List<PrinterClient> rigs, int seconds) {
        this.mosquitto = mosquitto;
        this.rigs = rigs;
        this.seconds = seconds;
    }

    /**
     * Measures and prints.
     *
     * @param args how they connect, how many, seconds
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        Brokers brokers = args[0].equals("own")
                ? Brokers.eachItsOwn(Patience.USUAL)
                : new SharedBrokers(Patience.USUAL, new Crew());
        int count = Integer.parseInt(args[1]);
        int seconds = Integer.parseInt(args[2]);
        List<PrinterClient> rigs = new ArrayList<>();
        try (Mosquitto mosquitto = Mosquitto.start()) {
            double memory = residentMebibytes();
            for (int i = 0; i < count; i++) {
                PrinterClient rig = rig(brokers, mosquitto, i);
                rigs.add(rig);
                rig.start();
            }
            rigs.forEach(
                    rig -> Await.until("connected", () -> rig.brokerState().phase() == BrokerState.Phase.CONNECTED));
            double added = residentMebibytes() - memory;
            MessageFigures figures = new MessageFigures(mosquitto, rigs, seconds);
            figures.micros("all/x/heat");
            double nobody = figures.micros("nobody/x/heat");
            double one = figures.micros("shop/r0/heat") - nobody;
            double all = figures.micros("all/x/heat") - nobody;
            System.out.printf(
                    Locale.ROOT,
                    "%s, %d rigs: connections add %.1f MiB, %d threads in all; a message that one rig wants takes %.0f"
                            + " µs of processor time, one that all want %.0f µs (%.1f µs a rig)%n",
                    args[0],
                    count,
                    added,
                    ManagementFactory.getThreadMXBean().getThreadCount(),
                    one,
                    all,
                    all / count);
            rigs.forEach(PrinterClient::close);
        }
    }

    private static PrinterClient rig(Brokers brokers, Mosquitto mosquitto, int number) {
        List<Bindings.OfReading> own = readings("shop/r" + number + "/heat");
        List<Bindings.OfReading> all = readings("all/+/heat");
        Bindings bindings = new Bindings(
                List.of(),
                Map.of(Quantity.BED_ACTUAL, concat(own, all), Quantity.BED_SETPOINT, concat(own, all)),
                Map.of());
        return new PrinterClient(
                new Broker(mosquitto.url(), Optional.empty(), Optional.empty(), Optional.empty()),
                Map.of(Statuses.UNNAMED, bindings),
                System::nanoTime,
                (name, status) -> {},
                new Contact(new OwnTopics("lampwright/r" + number), "lost", "stopped", (word, payload, retained) -> ""),
                brokers);
    }

    private static List<Bindings.OfReading> concat(List<Bindings.OfReading> one, List<Bindings.OfReading> two) {
        List<Bindings.OfReading> all = new ArrayList<>(one);
        all.addAll(two);
        return all;
    }

    private static List<Bindings.OfReading> readings(String topic) {
        return List.of(new Bindings.OfReading(new Source(topic, PayloadPath.at("/plate/now")), Unit.OWN, 1, 0));
    }

    /** Processor time of this process for each message on a topic, in µs, that for having them published included, until all have been heard. */
    private double micros(String topic) throws IOException, InterruptedException {
        Process publisher = new ProcessBuilder("mosquitto_pub", "-p", "" + mosquitto.port(), "-t", topic, "-l").start();
        long cpu = SYSTEM.getProcessCpuTime();
        long begun = System.nanoTime();
        try (OutputStream lines = publisher.getOutputStream()) {
            for (int batch = 0; batch < seconds * BATCHES_PER_SECOND; batch++) {
                lines.write(batch(batch).getBytes(StandardCharsets.UTF_8));
                lines.flush();
                long due = begun + (batch + 1) * TimeUnit.SECONDS.toNanos(1) / BATCHES_PER_SECOND;
                LockSupport.parkNanos(due - System.nanoTime());
            }
        }
        publisher.waitFor();
        long before;
        do {
            before = heard();
            TimeUnit.MILLISECONDS.sleep(QUIET_MS);
        } while (heard() != before);
        return (SYSTEM.getProcessCpuTime() - cpu) / 1000.0 / (PER_SECOND * seconds);
    }

    private long heard() {
        return rigs.stream().mapToLong(PrinterClient::messages).sum();
    }

    private static String batch(int number) {
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < PER_SECOND / BATCHES_PER_SECOND; i++) {
            lines.append("{\"plate\":{\"now\":").append(20 + (number + i) % 80).append(",\"set\":100},\"more\":\"");
            lines.append("x".repeat(REST)).append("\"}\n");
        }
        return lines.toString();
    }

    private static double residentMebibytes() throws IOException {
        return Files.readAllLines(Path.of("/proc/self/status")).stream()
                .filter(line -> line.startsWith("VmRSS"))
                .mapToDouble(line -> Double.parseDouble(line.replaceAll("[^0-9]", "")) / 1024)
                .findFirst()
                .orElse(Double.NaN);
    }
}
