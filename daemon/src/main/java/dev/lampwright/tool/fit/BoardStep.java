package dev.lampwright.tool.fit;

import dev.lampwright.board.BoardKind;
import dev.lampwright.board.FirmwareImages;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the controller, and checks whether anything lights up. */
final class BoardStep implements Step {
    private static final List<Integer> FIRST_BYTES = List.of(0, 1, 2, 3);
    private static final int LEVEL = 100;
    /** WS2812B datasheet: V_IH is 0.7 × VDD at least. */
    private static final double LEAST_DATA_VOLTS = 0.7 * 5;

    private static final String BETWEEN = " ";
    private static final String WITHOUT_ID = "without-id";

    @Override
    public String name() {
        return "controller";
    }

    @Override
    public String title() {
        return "find the controller";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        bench.putOut();
        String found = bench.find(() -> noted(choose(bench)));
        Boards.Answering board = again(found, bench);
        Here here = board.here();
        bench.say(Phrase.of(
                "board_found",
                named(id(here)) + " at " + board.port() + ": up to " + here.mostPixels() + " pixels of three channels, "
                        + here.dimmers() + " dimmers.",
                "port",
                board.port(),
                "pixels",
                here.mostPixels(),
                "dimmers",
                here.dimmers()));
        FirmwareImages.packaged()
                .update(here, board.port(), bench.boards().baud())
                .ifPresent(update ->
                        bench.say(Phrase.of("firmware_old", "Firmware: " + update + ".", "why", Phrase.plain(update))));
        BoardKind.of(here).ifPresent(kind -> bench.say(onBoard(kind)));
        Findings after =
                before.withBoard(new Findings.Board(board.port(), bench.boards().baud(), here));
        bench.lightUp(board.port(), here);
        seeLight(after, bench);
        return after;
    }

    private static Phrase onBoard(BoardKind kind) {
        String pins = "The strip's data wire goes to " + kind.dataPin(0) + " of your " + kind.chip() + " board";
        boolean low = kind.logicVolts() < LEAST_DATA_VOLTS;
        return Phrase.of(
                low ? "board_pin_low" : "board_pin",
                low
                        ? pins + ", which gives " + kind.logicVolts()
                                + " V: a strip at 5 V needs a 5 V level shifter with TTL inputs in between (74AHCT125 or the like)."
                        : pins + ".",
                "pin",
                kind.dataPin(0),
                "chip",
                kind.chip(),
                "volts",
                kind.logicVolts());
    }

    /**
     * Finds the controller at a known port, or at another one that the user chooses.
     *
     * @param port where it should be
     * @return the controller that answers
     */
    static Boards.Answering at(String port, FittingBench bench) throws LeaveException, IOException {
        bench.say(Phrase.of("board_looking_at", "Looking for the controller at " + port + ".", "port", port));
        bench.speak();
        Boards.Candidate there = bench.boards().ask(port);
        if (there instanceof Boards.Answering answering) {
            return answering;
        }
        if (there instanceof Boards.Silent silent) {
            bench.say(silent.obstacle());
        }
        String found = bench.find(() -> noted(choose(bench)));
        return again(found, bench);
    }

    private static Boards.Answering choose(FittingBench bench) throws LeaveException, IOException {
        while (true) {
            bench.say(Phrase.of("board_looking", "Looking for controllers; each silent port takes five seconds."));
            bench.speak();
            List<Boards.Answering> good = new ArrayList<>();
            for (Boards.Candidate each : bench.boards().look()) {
                if (each instanceof Boards.Silent silent) {
                    bench.say(silent.obstacle());
                } else if (each instanceof Boards.Answering answering) {
                    good.add(answering);
                }
            }
            Optional<Boards.Answering> chosen = good.size() == 1 ? Optional.of(good.get(0)) : ask(good, bench);
            if (chosen.isPresent()) {
                return chosen.get();
            }
        }
    }

    private static Optional<Boards.Answering> ask(List<Boards.Answering> good, FittingBench bench)
            throws LeaveException, IOException {
        if (good.isEmpty()) {
            bench.say(Phrase.of(
                    "none_found",
                    "No controller answers. Plug it in; flash its firmware if you have not done that yet; make sure that nothing"
                            + " else is using its port, such as the daemon."));
            return askForPort(bench);
        }
        List<Question.Option<Optional<Boards.Answering>>> options = new ArrayList<>();
        for (int i = 0; i < good.size(); i++) {
            Boards.Answering each = good.get(i);
            String words = String.join(" ", each.port(), each.description(), "controller", id(each.here()));
            options.add(new Question.Option<>(Integer.toString(i + 1), words, Optional.of(each)));
        }
        options.add(new Question.Option<>("", "look again", Optional.empty(), "look"));
        return bench.ask(Question.choice(
                        "Which one do you want to fit?",
                        "You can unplug the others, or go back and choose again: nothing is lost.",
                        options)
                .coded("board_which"));
    }

    /** A port that is typed is tried again and again; all ports only if the user says so. */
    private static Optional<Boards.Answering> askForPort(FittingBench bench) throws LeaveException, IOException {
        Optional<Boards.Answering> there = Optional.empty();
        while (there.isEmpty()) {
            String port = bench.ask(new Question<String>(
                            "Press Enter to look again, or type the name of a port:",
                            "The controller is the board that drives the strip. Its port is for instance /dev/ttyACM0;"
                                    + " 'lampwright ports' lists all ports.",
                            line -> line)
                    .coded("board_none")
                    .in(Form.TEXT.skipped("look")));
            if (port.isEmpty()) {
                return there;
            }
            there = answering(bench.boards().ask(port), bench);
        }
        return there;
    }

    private static Optional<Boards.Answering> answering(Boards.Candidate candidate, FittingBench bench) {
        if (candidate instanceof Boards.Silent silent) {
            bench.say(silent.obstacle());
        }
        return candidate instanceof Boards.Answering answering ? Optional.of(answering) : Optional.empty();
    }

    /** The controller that was found before, wherever it is plugged in now. */
    private static Boards.Answering again(String noted, FittingBench bench) throws LeaveException, IOException {
        String id = noted.substring(0, noted.indexOf(BETWEEN));
        String port = noted.substring(noted.indexOf(BETWEEN) + 1);
        while (true) {
            if (bench.boards().ask(port) instanceof Boards.Answering there
                    && id(there.here()).equals(id)) {
                return there;
            }
            for (Boards.Candidate each : bench.boards().look()) {
                if (each instanceof Boards.Answering other && id(other.here()).equals(id)) {
                    return other;
                }
            }
            bench.askAside(Question.enter(
                            named(id)
                                    + ", which this fitting began with, is not connected. Plug it in and press Enter:",
                            "It was at " + port + ". To fit another controller, go back with b, or start again.")
                    .coded("board_again", "id", id, "port", port));
        }
    }

    private static String noted(Boards.Answering board) {
        return id(board.here()) + BETWEEN + board.port();
    }

    private static String id(Here here) {
        return here.id() == 0 ? WITHOUT_ID : String.format("%016x", here.id());
    }

    private static String named(String id) {
        return "Controller " + (id.equals(WITHOUT_ID) ? "without an id" : id);
    }

    private static void seeLight(Findings after, FittingBench bench) throws LeaveException, IOException {
        Setup setup = FittingSetups.of(after);
        bench.show(setup, Scenes.bytes(FittingSetups.level(setup, FIRST_BYTES.size(), LEVEL), FIRST_BYTES));
        while (!bench.ask(Question.yesOrNo(
                        "Is something lit at the end of the strip that is nearest the controller?",
                        "The first pixel is lit, and perhaps the second, in any colour, not very bright.")
                .coded("board_lit"))) {
            bench.say(Phrase.of(
                    "wiring_check", "Then check the following. Switch the supply off before you touch any wire:"));
            bench.say(Phrase.of(
                    "wiring_supply", "  - Is the strip's supply on? Is its ground joined to the controller's?"));
            bench.say(Phrase.of(
                    "wiring_end",
                    "  - Does the data wire go to the end marked DIN, from which the arrows point away?"));
            bench.say(Phrase.of(
                    "wiring_pin",
                    "  - Is it on the right pin, and does the strip understand the pulses of a WS2812B?"));
        }
    }
}
