package dev.lampwright.testing;

import dev.lampwright.broker.Broker;
import dev.lampwright.payload.PayloadPath;
import dev.lampwright.payload.Quantity;
import dev.lampwright.payload.Source;
import dev.lampwright.payload.Unit;
import dev.lampwright.printer.Bindings;
import dev.lampwright.printer.PrinterState;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** An invented printer, and where it reports what. */
public final class Alder {
    public static final String JOB = "shop/alder/job";
    public static final String HEAT = "shop/alder/heat";

    private Alder() {}

    public static Bindings bindings() {
        return new Bindings(List.of(state()), readings(), Map.of());
    }

    public static Bindings bindingsWithoutState() {
        return new Bindings(List.of(), readings(), Map.of());
    }

    private static Bindings.OfState state() {
        Map<PrinterState, List<String>> words = new LinkedHashMap<>();
        words.put(PrinterState.WARMING, List.of("PREHEAT"));
        words.put(PrinterState.PRINTING, List.of("RUN", "RUN *"));
        words.put(PrinterState.FAULT, List.of("ALARM*", "*FAIL*"));
        return new Bindings.OfState(new Source(JOB, PayloadPath.at("/phase")), words);
    }

    private static Map<Quantity, List<Bindings.OfReading>> readings() {
        Map<Quantity, List<Bindings.OfReading>> readings = new EnumMap<>(Quantity.class);
        readings.put(Quantity.BED_ACTUAL, binding(HEAT, PayloadPath.at("/plate/now"), 1, 0));
        readings.put(Quantity.BED_SETPOINT, binding(HEAT, PayloadPath.at("/plate/set"), 1, 0));
        readings.put(Quantity.NOZZLE_ACTUAL, binding(HEAT, PayloadPath.at("/tip/now"), 1, 0));
        readings.put(Quantity.NOZZLE_SETPOINT, binding(HEAT, PayloadPath.at("/tip/set"), 1, 0));
        readings.put(Quantity.JOB_PROGRESS, binding(JOB, PayloadPath.at("/percent"), 0.01, 0));
        readings.put(Quantity.JOB_LEFT, binding("shop/alder/left", PayloadPath.BARE, 60, 0));
        readings.put(Quantity.CHAMBER_ACTUAL, binding("shop/alder/room_F", PayloadPath.BARE, 5.0 / 9, -160.0 / 9));
        return readings;
    }

    private static List<Bindings.OfReading> binding(String topic, PayloadPath path, double scale, double offset) {
        return List.of(new Bindings.OfReading(new Source(topic, path), Unit.OWN, scale, offset));
    }

    public static Broker at(URI url) {
        return new Broker(url, Optional.empty(), Optional.empty(), Optional.empty());
    }

    public static URI url(int port) {
        return URI.create("mqtt://127.0.0.1:" + port);
    }

    public static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
