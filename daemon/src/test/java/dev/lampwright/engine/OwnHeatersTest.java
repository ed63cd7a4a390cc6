package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.ConfigFile;
import dev.lampwright.config.Mistake;
import dev.lampwright.demo.MemoryController;
import dev.lampwright.demo.MemoryLine;
import dev.lampwright.payload.OwnHeater;
import dev.lampwright.printer.PrinterState;
import dev.lampwright.printer.PrinterStatus;
import dev.lampwright.printer.StatusLines;
import dev.lampwright.printer.StatusReader;
import dev.lampwright.printer.Statuses;
import dev.lampwright.protocol.Frame;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.FreePort;
import dev.lampwright.tool.check.AskedLight;
import dev.lampwright.tool.check.MadeUpStatus;
import dev.lampwright.tool.plan.LookDemand;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A user-defined heater, from messages to light, in the report, in the invented status of check and plan, and in recordings. */
class OwnHeatersTest {
    private static final String TOPIC = "shop/rowan/heat";
    private static final String FILE = """
            broker.url = "mqtt://127.0.0.1:%d"
            controller.port = "memory"
            strip = { pixels = 20, order = "GRB" }
            supply.ceiling_mA = 65535
            zones = { left = "0-9", right = "10-19" }
            """.formatted(FreePort.find());
    private static final String READINGS = """
            [printer.readings]
            nozzle.actual_C = { topic = "shop/rowan/heat", at = "/a/now" }
            nozzle.setpoint_C = { topic = "shop/rowan/heat", at = "/a/set" }
            nozzle2.actual_C = { topic = "shop/rowan/heat", at = "/b/now", unit = "°F" }
            nozzle2.setpoint_C = { topic = "shop/rowan/heat", at = "/b/set", unit = "°F" }
            nozzle2.fan = { topic = "shop/rowan/heat", at = "/b/fan", unit = "percent" }
            """;
    private static final String LOOK = """
            [looks.both]
            layers = [
              { zone = "left", paint = "scale", colours = ["blue", "red"], by = "nozzle.heat", extent = "bar" },
              { zone = "right", paint = "scale", colours = ["blue", "red"], by = "nozzle2.heat", extent = "bar" },
            ]
            [[cues]]
            signal = "nozzle2.ready_s"
            above = 0
            look = "both"
            [[cues]]
            signal = "nozzle2.heat"
            above = -1
            look = "both"
            """;
    private static final long SECOND = 1_000_000_000L;

    private static Config config(String more) throws ConfigException {
        return ConfigFile.read(FILE + more, "t.toml");
    }

    private static PrinterStatus heard(StatusReader reader, PrinterStatus before, String json, double seconds) {
        return reader.read(before, TOPIC, json.getBytes(StandardCharsets.UTF_8), Math.round(seconds * SECOND));
    }

    private static PrinterStatus heard(Config config, String json) {
        return heard(new StatusReader(config.bindings()), PrinterStatus.nothingHeard(), json, 0);
    }

    @Test
    void areReadLikeTheNozzle() throws ConfigException {
        Config config = config(READINGS);
        assertEquals(List.of(new OwnHeater("nozzle2")), config.bindings().heaters());
        PrinterStatus status = heard(config, "{\"b\": {\"now\": 212, \"set\": \"428 °F\", \"fan\": 40}}");
        assertEquals(100, status.own("nozzle2.actual_C").value(), 1e-9);
        assertEquals(220, status.own("nozzle2.setpoint_C").value(), 1e-9);
        assertEquals(40, status.own("nozzle2.fan").value());
        assertEquals(
                0,
                heard(config, "{\"b\": {\"set\": 0}}").own("nozzle2.setpoint_C").value(),
                "a target of 0 is off in any unit");
        PrinterStatus broken = heard(config, "{\"b\": {\"now\": 5000, \"set\": 428}}");
        assertTrue(Double.isNaN(broken.own("nozzle2.actual_C").value()), "no nozzle is so hot");
    }

    /** Both nozzles report the same, the second in °F, and their bars have the same length. */
    @Test
    void lightFollowsThemAlike() throws ConfigException {
        Config config = config(READINGS + LOOK);
        Chain chain = Chain.of(config);
        StatusReader reader = new StatusReader(config.bindings());
        PrinterStatus status = PrinterStatus.nothingHeard();
        Frame frame = new Frame(config.setup().stripBytes(), 0);
        int lit = 0;
        for (int t = 0; t < 60; t++) {
            int now = 22 + 3 * t;
            status = heard(
                    reader,
                    status,
                    "{\"a\": {\"now\": %d, \"set\": 202}, \"b\": {\"now\": %s, \"set\": 395.6}}"
                            .formatted(now, now * 1.8 + 32),
                    t);
            for (int i = 0; i < 10; i++) {
                chain.make(status, t * SECOND + i * SECOND / 10, frame);
            }
            assertArrayEquals(half(frame, 0), half(frame, 1), "at " + t + " s");
            lit += Arrays.equals(half(frame, 1), new byte[30]) ? 0 : 1;
        }
        assertEquals("both", chain.look());
        assertTrue(lit > 30, lit + " of 60 frames were lit");
    }

    private static byte[] half(Frame frame, int which) {
        byte[] half = new byte[30];
        System.arraycopy(frame.strip(), 30 * which, half, 0, 30);
        return half;
    }

    @Test
    void aFrameWithThemAllocatesNothing() throws ConfigException {
        StringBuilder more = new StringBuilder("[printer.readings]\n");
        IntStream.rangeClosed(2, 9)
                .forEach(i ->
                        more.append("nozzle%d = { actual_C.topic = \"a\", setpoint_C.topic = \"b\" }%n".formatted(i)));
        Config config = config(more + LOOK.replace("nozzle.heat", "nozzle9.heat"));
        Chain chain = Chain.of(config);
        PrinterStatus[] statuses = MadeUpStatus.all(config.bindings()).toArray(PrinterStatus[]::new);
        Frame frame = new Frame(config.setup().stripBytes(), 0);
        FrameBoard.Figures figures = new FrameBoard.Figures();
        figures.follow(chain.followed());
        FrameBoard board = new FrameBoard(figures);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long least = Long.MAX_VALUE;
        for (int round = 0; round < 8; round++) {
            long before = threads.getCurrentThreadAllocatedBytes();
            for (int i = 0; i < 1000; i++) {
                chain.make(statuses[10], (round * 1000L + i) * SECOND / 60 + 10 * SECOND, frame);
                for (int signal = 0; signal < figures.values.length; signal++) {
                    figures.values[signal] = chain.signal(figures.signals.get(signal), 10 * SECOND);
                }
                board.write(figures);
            }
            least = Math.min(least, (threads.getCurrentThreadAllocatedBytes() - before) / 1000);
        }
        assertEquals(0, least);
    }

    /** The report has the signals of light, and readings as they were read; another configuration has other heaters. */
    @Test
    void theReportHasTheirSignals() throws ConfigException {
        MemoryController controller = new MemoryController(MemoryController.BOARD, (light, sequence, frame, at) -> {});
        MemoryLine line = new MemoryLine(controller, 500_000, System::nanoTime);
        try (Daemon daemon = new Daemon(config(READINGS), same -> line)) {
            daemon.start();
            Await.until("a frame", () -> daemon.report().signals().containsKey("nozzle2.heat"));
            List<String> names = List.copyOf(daemon.report().signals().keySet());
            assertTrue(
                    names.containsAll(List.of(
                            "nozzle2.heat",
                            "nozzle2.cooling",
                            "nozzle2.ready_s",
                            "nozzle2.ready_error_s",
                            "nozzle2.speed_K_per_s",
                            "nozzle2.actual_C",
                            "nozzle2.setpoint_C",
                            "nozzle2.fan")),
                    names.toString());
            assertEquals(
                    List.of("nozzle2.fan"), List.copyOf(daemon.report().units().keySet()));
            daemon.change(config(READINGS.replace("nozzle2", "dryer")));
            Await.until("the other heater", () -> daemon.report().signals().containsKey("dryer.heat"));
            assertEquals(
                    names.size(),
                    daemon.report().signals().size(),
                    () -> "nothing is left of " + daemon.report().signals());
        }
    }

    @Test
    void theStateFollowsFromThemToo() throws ConfigException {
        Config config = config(READINGS + "job.progress = { topic = \"shop/rowan/heat\", at = \"/done\" }\n");
        PrinterStatus status = heard(config, "{\"a\": {\"now\": 20, \"set\": 0}, \"b\": {\"now\": 68, \"set\": 392}}");
        assertEquals(PrinterState.WARMING, status.state());
        status =
                heard(config, "{\"a\": {\"now\": 20, \"set\": 0}, \"b\": {\"now\": 392, \"set\": 392}, \"done\": 0.4}");
        assertEquals(PrinterState.PRINTING, status.state(), "one nozzle prints, the other is off");
        status =
                heard(config, "{\"a\": {\"now\": 20, \"set\": 0}, \"b\": {\"now\": 122, \"set\": 122}, \"done\": 0.4}");
        assertEquals(PrinterState.IDLE, status.state(), "what is set to 50 °C is no nozzle");
    }

    @Test
    void checkAndPlanHeatThemUp() throws ConfigException {
        Config config = config(READINGS + LOOK);
        List<PrinterStatus> made = MadeUpStatus.all(config.bindings());
        PrinterStatus hot = made.get(9);
        assertEquals(215, hot.own("nozzle2.setpoint_C").value());
        assertEquals(215, hot.own("nozzle2.actual_C").value(), 1e-9);
        PrinterStatus last = made.get(made.size() - 1);
        assertEquals(0, last.own("nozzle2.setpoint_C").value());
        double[] most = new double[1];
        LookDemand both = AskedLight.ofAll(config).stream()
                .filter(demand -> demand.name().equals("both"))
                .findFirst()
                .orElseThrow();
        both.moments((strip, dimmers) -> most[0] = Math.max(most[0], strip[19 * 3 + 1]));
        assertTrue(most[0] > 0.9, "the last pixel of the second nozzle gets " + most[0]);
    }

    @Test
    void areRecordedAndPlayedBack() throws ConfigException, StatusLines.BadLineException {
        PrinterStatus status = heard(config(READINGS), "{\"b\": {\"now\": 212, \"set\": 392}}");
        PrinterStatus played = PrinterStatus.nothingHeard();
        for (String line : StatusLines.between(Statuses.of(PrinterStatus.nothingHeard()), Statuses.of(status), 0, 0)) {
            played = StatusLines.read(line, played).status();
        }
        assertEquals(status.own("nozzle2.actual_C"), played.own("nozzle2.actual_C"));
        assertEquals(status.own("nozzle2.setpoint_C"), played.own("nozzle2.setpoint_C"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            nozzle2.actual_C = { topic = "t" }                   | printer.readings.nozzle2.actual_C: is not a known reading; give nozzle2.setpoint_C too if it is a heater of your own
            dryer.setpoint_C = { topic = "t" }                   | printer.readings.dryer.setpoint_C: is not a known reading; give dryer.actual_C too if it is a heater of your own
            dryer = { actual_C = { topic = "t", unit = "percent" }, setpoint_C.topic = "u" } | printer.readings.dryer.actual_C.unit: is "percent"; give one of "°C", "°F", "K"
            dryer = { actual_C = { topic = "t", range = [0, 90] }, setpoint_C.topic = "u" } | printer.readings.dryer.actual_C.range: is not known; remove it; the keys here are: topic, at, where, among, field, separator, pattern, unit, scale, offset
            dryer = { actual_C.topic = "t", setpoint_C.topic = "u", heat = { topic = "v", unit = "W" } } | printer.readings.dryer.heat: is the name of a signal that Lampwright calculates; choose another name
            nozle = { actual_C.topic = "t", setpoint_C.topic = "u" } | printer.readings.nozle: is not a known heater, and nozzle has no readings; did you mean nozzle? If not, choose a name that is less like it
            """)
    void saysWhatIsWrong(String line, String mistake) {
        ConfigException e = assertThrows(
                ConfigException.class,
                () -> config("[printer.readings]\nok = { topic = \"t\", unit = \"g\" }\n" + line));
        assertEquals(
                List.of("t.toml:8: " + mistake),
                e.mistakes().stream().map(Mistake::toString).toList());
    }

    /** Each of two lines is reported once, and not its content as well. */
    @Test
    void aSlipInOneOfTheTwoIsPointedOut() {
        ConfigException e = assertThrows(ConfigException.class, () -> config("""
                [printer.readings]
                right.actual_C = { topic = "t" }
                right.setpont_C = { topic = "t", at = "/set" }
                """));
        assertEquals(
                List.of(
                        "t.toml:7: printer.readings.right.actual_C: is not a known reading; give right.setpoint_C too if it is"
                                + " a heater of your own",
                        "t.toml:8: printer.readings.right.setpont_C: is not a known reading; did you mean"
                                + " right.setpoint_C?"),
                e.mistakes().stream().map(Mistake::toString).toList());
    }

    @Test
    void namesThatBeginWithAKnownOneAreMeant() throws ConfigException {
        Config config = config("""
                [printer.readings]
                nozzle_left = { actual_C.topic = "t", setpoint_C.topic = "u" }
                nozzle_right = { actual_C.topic = "v", setpoint_C.topic = "w" }
                """);
        assertEquals(
                List.of(new OwnHeater("nozzle_left"), new OwnHeater("nozzle_right")),
                config.bindings().heaters());
    }

    @Test
    void eightAreEnough() {
        StringBuilder more = new StringBuilder("[printer.readings]\n");
        IntStream.rangeClosed(1, 9)
                .forEach(i ->
                        more.append("tool%d = { actual_C.topic = \"a\", setpoint_C.topic = \"b\" }%n".formatted(i)));
        ConfigException e = assertThrows(ConfigException.class, () -> config(more.toString()));
        assertEquals(
                List.of("t.toml:15: printer.readings.tool9: is one of more than 8 heaters of your own; remove some"),
                e.mistakes().stream().map(Mistake::toString).toList());
    }
}
