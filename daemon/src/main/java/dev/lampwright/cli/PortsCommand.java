package dev.lampwright.cli;

import dev.lampwright.board.BoardKind;
import dev.lampwright.board.FirmwareImages;
import dev.lampwright.json.Json;
import dev.lampwright.link.Inquiry;
import dev.lampwright.link.LineException;
import dev.lampwright.link.Port;
import dev.lampwright.link.Ports;
import dev.lampwright.link.SerialLine;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.LastReset;
import dev.lampwright.protocol.Message;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code ports}: which serial ports exist, and which controllers answer on those named. */
@Command(
        name = "ports",
        header = "List serial ports, and find controllers.",
        description = {
            "Lists the serial ports of this machine. Asks the controller at each PORT that you name, and prints the"
                    + " controller's id, versions and limits. It lights nothing."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:listed, or every named port has a controller", "1:a named port has none", "2:usage error"},
        footer = {"", "Example: lampwright ports /dev/ttyACM0"})
final class PortsCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "PORT",
            arity = "0..*",
            description = "A port with a controller, for instance /dev/ttyACM0.")
    private List<String> named = new ArrayList<>();

    @Mixin
    private BaudOption line;

    @Mixin
    private JsonOption json;

    private final List<Map<String, Object>> answers = new ArrayList<>();
    private boolean failed;

    @Override
    public Integer call() {
        if (named.isEmpty()) {
            list();
        } else {
            named.forEach(this::ask);
        }
        if (json.wanted()) {
            out().println(Json.of(answers));
        }
        return failed ? ExitCode.SOFTWARE : ExitCode.OK;
    }

    private void list() {
        List<Port> ports = Ports.list();
        if (ports.isEmpty() && !json.wanted()) {
            out().println("no serial ports found: plug the controller in");
        }
        ports.forEach(this::tell);
    }

    private void tell(Port port) {
        String obstacle = Ports.obstacle(port).map(Phrase::english).orElse("");
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("port", port.path());
        answer.put("stable_name", port.stablePath());
        answer.put("device", port.description());
        answer.put("obstacle", obstacle);
        answers.add(answer);
        if (!json.wanted()) {
            out().println(String.join("  ", port.path(), port.description(), port.stablePath())
                    .strip());
            if (!obstacle.isEmpty()) {
                out().println("  " + obstacle);
            }
        }
    }

    private void ask(String port) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("port", port);
        answers.add(answer);
        try {
            Here here = Inquiry.of(new SerialLine(port, line.baud()), System::nanoTime);
            String update =
                    FirmwareImages.packaged().update(here, port, line.baud()).orElse("");
            describe(answer, here);
            answer.put("firmware_packaged", FirmwareImages.VERSION);
            answer.put("firmware_update", update);
            if (!json.wanted()) {
                out().println(port + ": " + words(here));
                if (!update.isEmpty()) {
                    out().println("  " + update);
                }
            }
        } catch (LineException e) {
            failed = true;
            answer.put("obstacle", e.getMessage());
            if (!json.wanted()) {
                spec.commandLine().getErr().println(e.getMessage());
            }
        }
    }

    private static void describe(Map<String, Object> answer, Here here) {
        answer.put("id", id(here));
        answer.put("board", BoardKind.of(here).map(BoardKind::chip).orElse(""));
        answer.put("firmware", here.firmware());
        answer.put("wire_version", here.version());
        answer.put("wire_version_spoken_here", Message.WIRE_VERSION);
        answer.put("most_pixels", here.mostPixels());
        answer.put("most_packet_bytes", here.mostPacketBytes());
        answer.put("data_lines", here.outputs());
        answer.put("dimmers", here.dimmers());
        answer.put("credits", here.credits());
        answer.put("strip_byte_ns", here.byteNanos());
        answer.put("listens_while_driving", here.listensWhileDriving());
        answer.put("last_reset", here.lastReset().word());
    }

    private static String words(Here here) {
        return "controller " + id(here)
                + BoardKind.of(here).map(kind -> ", " + kind.chip()).orElse("") + ", firmware " + here.firmware()
                + ", wire version " + here.version()
                + "; up to "
                + here.mostPixels() + " pixels of three channels"
                + (here.outputs() == 1 ? "" : " on " + here.outputs() + " data lines") + ", " + here.dimmers()
                + " dimmers, packets of up to "
                + here.mostPacketBytes() + " bytes, " + here.credits()
                + (here.credits() == 1 ? " credit" : " credits")
                + (here.lastReset() == LastReset.UNKNOWN
                        ? ""
                        : "; it started " + here.lastReset().words());
    }

    private static String id(Here here) {
        return here.id() == 0 ? "without an id" : String.format("%016x", here.id());
    }

    private PrintWriter out() {
        return spec.commandLine().getOut();
    }
}
