package dev.lampwright.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.LastReset;
import dev.lampwright.testing.Await;
import dev.lampwright.testing.EmulatedBoard;
import dev.lampwright.testing.Firmware;
import dev.lampwright.testing.PtyController;
import dev.lampwright.testing.RunningDaemon;
import java.time.Duration;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;

/** The daemon's status says why the controller last started. */
@Tag("alone")
@Timeout(120)
class LastResetIT extends OwnBench {
    private static final Duration LONG = Duration.ofSeconds(30);
    private static final String STATUS = "lampwright/status";

    private void awaitStatus(String cause, RunningDaemon daemon) {
        String told = "\"link\":\"lit\",\"controller_last_reset\":\"" + cause + "\"";
        Await.until(
                () -> "the status says " + cause + ": " + birch.broker().read(STATUS) + daemon.log(),
                () -> birch.broker().read(STATUS).contains(told),
                LONG);
    }

    @Test
    void aBrownOutIsInStatusAndLog() {
        Here weak = new Here(1, "1.1.0", 1, 300, 1024, 6, 1, 10_000, false, 1, LastReset.BROWN_OUT);
        PtyController controller = running(new PtyController(folder.resolve("controller"), weak));
        controller.plug();
        RunningDaemon daemon = running(RunningDaemon.start(birch.configure(folder, controller.port(), 500_000)));
        awaitStatus("brown_out", daemon);
        assertEquals(
                1,
                daemon.linesWith(0, "because its supply voltage fell too low").size());
    }

    /** The board's program hangs, and its watchdog ends that; then its button is pressed. */
    @ParameterizedTest
    @FieldSource("dev.lampwright.testing.Firmware#USUAL")
    void watchdogAndButtonAreReportedApart(Firmware.Build build) {
        EmulatedBoard board = running(EmulatedBoard.start(build, folder.resolve("board")));
        RunningDaemon daemon = running(RunningDaemon.start(birch.configure(folder, board.port(), build.hostBaud())));
        awaitStatus("power", daemon);
        board.command("hang");
        awaitStatus("watchdog", daemon);
        board.command("reset");
        awaitStatus("button", daemon);
    }
}
