package dev.lampwright.config;

import dev.lampwright.board.BoardKind;
import dev.lampwright.protocol.Setup;
import java.util.Optional;

/** Which board the controller is, and whether the reference firmware on it can do what the file asks for. */
final class BoardKinds {
    private BoardKinds() {}

    /**
     * The board that the file names.
     *
     * @param controller the section
     * @return what {@code board} says, or else what the port's name implies; empty if neither does
     */
    static Optional<BoardKind> told(ControllerSection controller) {
        return controller
                .board()
                .or(() -> Optional.of(BoardKind.RP2040).filter(board -> board.isNamedIn(controller.port())));
    }

    /**
     * The board that the file is most likely about.
     *
     * @param controller the section
     * @param strip the section
     * @return the board that the file names; else an RP2040 if the strip is on several data lines, otherwise an ATmega328P
     */
    static BoardKind likely(ControllerSection controller, StripSection strip) {
        return told(controller).orElse(strip.runs().isEmpty() ? BoardKind.ATMEGA328P : BoardKind.RP2040);
    }

    /** Reports what the board cannot do, if the file says which one it is. */
    static void noteLimits(Table root, ControllerSection controller, StripSection strip, DimmersSection dimmers) {
        Optional<BoardKind> told = told(controller);
        Table table = root.table("strip");
        if (told.isEmpty() || !table.right() || !root.table("controller").right()) {
            return;
        }
        BoardKind board = told.get();
        noteStrip(table, board, strip);
        noteOutputs(table, board, strip);
        Table lights = root.table("dimmers");
        if (lights.right() && dimmers.outputs().size() > board.dimmers()) {
            String name = dimmers.entries().stream()
                    .filter(entry -> entry.channels().stream().anyMatch(channel -> channel >= board.dimmers()))
                    .map(DimmerEntry::name)
                    .findFirst()
                    .orElseThrow();
            String what = "needs more dimmers than the " + board.chip() + " has, which are channels 0 to "
                    + (board.dimmers() - 1);
            lights.mistake(name, what, "leave it out, or fit a second controller");
        }
    }

    private static void noteStrip(Table table, BoardKind board, StripSection strip) {
        int channels = strip.order().length();
        int most = board.stripBytes() / channels;
        if (strip.pixels() > most) {
            String what = "is " + strip.pixels() + ", and the " + board.chip() + " has room for " + most + " of "
                    + channels + " channels";
            table.mistake("pixels", what, larger(board, "give fewer"));
        }
    }

    private static void noteOutputs(Table table, BoardKind board, StripSection strip) {
        int needed = Setup.dataLines(strip.runs());
        if (needed > board.outputs()) {
            String what = "has " + needed + " data lines, and the " + board.chip() + " has " + board.outputs();
            table.mistake(StripOutputs.KEY.name(), what, larger(board, "remove it, and join the strip end to end"));
        }
    }

    private static String larger(BoardKind board, String remedy) {
        return board == BoardKind.ATMEGA328P ? remedy + ", or take an RP2040 board" : remedy;
    }
}
