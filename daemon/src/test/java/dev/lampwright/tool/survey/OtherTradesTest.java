package dev.lampwright.tool.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What other trades publish by open standards does not belong to a printer: nothing is proposed. Names and values are from memory. */
class OtherTradesTest {
    private static final int SECONDS = 1200;

    private record Told(String topic, String payload) {}

    private static Told told(String topic, String format, Object... values) {
        return new Told(topic, String.format(Locale.ROOT, format, values));
    }

    /** A milling machine in the data items of MTConnect (ANSI/MTC1.4, part 2): a part in 300 s, with a feed hold. */
    private static List<Told> millingMachine(int second, Random random) {
        int inPart = second % 300;
        String execution = inPart < 20
                ? "READY"
                : inPart < 150 ? "ACTIVE" : inPart < 170 ? "FEED_HOLD" : inPart < 280 ? "ACTIVE" : "PROGRAM_COMPLETED";
        boolean active = execution.equals("ACTIVE");
        return List.of(
                told("mtconnect/mill1/avail", "AVAILABLE"),
                told("mtconnect/mill1/controller/mode", "AUTOMATIC"),
                told("mtconnect/mill1/controller/execution", execution),
                told("mtconnect/mill1/controller/estop", "ARMED"),
                told("mtconnect/mill1/path/line", "%d", inPart),
                told("mtconnect/mill1/path/part_count", "%d", second / 300),
                told("mtconnect/mill1/spindle/Sspeed", "%d", active ? 8000 : 0),
                told("mtconnect/mill1/spindle/Stemp", "%.1f", 31 + 6 * Math.sin(second / 300.0) + random.nextDouble()),
                told("mtconnect/mill1/axes/Xact", "%.3f", 200 * Math.sin(second / 7.0)),
                told("mtconnect/mill1/axes/Zact", "%.3f", -inPart / 10.0),
                told("mtconnect/mill1/coolant/temperature", "%.1f", 22 + random.nextDouble()));
    }

    /** An electricity meter in the codes of OBIS (IEC 62056-61). */
    private static List<Told> meter(int second, Random random) {
        return List.of(
                told("meter/1-0:1.8.0", "%.3f", 4711 + second / 3600.0),
                told("meter/1-0:2.8.0", "%.3f", 12.0),
                told("meter/1-0:16.7.0", "%d", 300 + random.nextInt(900)),
                told("meter/1-0:32.7.0", "%.1f", 230 + random.nextDouble()),
                told("meter/1-0:14.7.0", "%.2f", 50 + 0.05 * random.nextGaussian()),
                told("meter/0-0:96.5.0", "0000"));
    }

    /** A heat meter in the units of M-Bus (EN 13757-3), with the heating's setpoint. */
    private static List<Told> heatMeter(int second, Random random) {
        return List.of(told(
                "mbus/heat",
                "{\"flow_temperature\":%.1f,\"return_temperature\":%.1f,\"volume_flow\":%.3f,\"power\":%d,\"energy\":%.2f,"
                        + "\"setpoint\":%.0f,\"status\":0,\"operating_time\":%d}",
                52 + 4 * Math.sin(second / 200.0),
                38 + 3 * Math.sin(second / 200.0),
                0.4 + random.nextDouble() / 10,
                5000 + random.nextInt(100),
                81.2 + second / 5000.0,
                55.0,
                90_000 + second));
    }

    /** A laboratory oven with SCPI-like names that is set to 55 °C and reaches it. */
    private static List<Told> boiler(int second, Random random) {
        double warm = 55 - 33 * Math.exp(-second / 120.0);
        return List.of(
                told("house/boiler/temp", "%.1f", warm + 0.1 * random.nextDouble()),
                told("house/boiler/target", "%.0f", second < 20 ? 10.0 : 55.0),
                told("house/boiler/state", second < 300 ? "heating" : "ready"));
    }

    private static Stream<Arguments> trades() {
        Random random = new Random(31);
        return Stream.of(
                Arguments.of("milling machine", (IntFunction<List<Told>>) second -> millingMachine(second, random)),
                Arguments.of("meter", (IntFunction<List<Told>>) second -> meter(second, random)),
                Arguments.of("heat meter", (IntFunction<List<Told>>) second -> heatMeter(second, random)),
                Arguments.of("boiler", (IntFunction<List<Told>>) second -> boiler(second, random)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("trades")
    void areNoPrinter(String name, IntFunction<List<Told>> speaker) {
        Survey survey = new Survey();
        for (int second = 0; second < SECONDS; second++) {
            for (Told told : speaker.apply(second)) {
                survey.hear(told.topic(), told.payload().getBytes(StandardCharsets.UTF_8), second * 1_000_000_000L);
            }
        }
        Proposal proposal = survey.proposal();
        assertEquals(
                List.of(),
                proposal.found().stream()
                        .map(Found::role)
                        .filter(role -> HeatedPart.of(role).isPresent())
                        .toList());
        assertFalse(ProposedConfig.isEnough(proposal), proposal.found().toString());
    }
}
