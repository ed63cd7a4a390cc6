package dev.lampwright.fuzz;

import java.util.List;

/** All ways in. */
final class Targets {
    static final List<Target> ALL = List.of(
            new Payloads(),
            new Topics(),
            new BrokerPackets(),
            new ControllerAnswers(),
            new ConfigFiles(),
            new Asks(),
            new HttpRequests());

    private Targets() {}
}
