package dev.lampwright.cli;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/**
 * How much text a terminal shows at once.
 *
 * @param lines how many lines, 1 or more
 * @param columns how many characters in each, 1 or more
 */
record TerminalSize(int lines, int columns) {
    /** What is assumed if the size is unknown: lines and columns of terminfo's vt100. */
    static final TerminalSize USUAL = new TerminalSize(24, 80);

    private static final long LONGEST_WAIT_S = 1;

    /** The size of the terminal in which the process runs, by {@code stty size}. */
    static TerminalSize now() {
        try {
            Process stty = new ProcessBuilder("stty", "size")
                    .redirectInput(Path.of("/dev/tty").toFile())
                    .redirectError(Redirect.DISCARD)
                    .start();
            if (!stty.waitFor(LONGEST_WAIT_S, TimeUnit.SECONDS)) {
                stty.destroyForcibly();
                return USUAL;
            }
            return of(new String(stty.getInputStream().readAllBytes(), StandardCharsets.US_ASCII));
        } catch (IOException e) {
            return USUAL;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return USUAL;
        }
    }

    /** Reads lines and columns, as printed by {@code stty}; a size of 0 means that the terminal does not know it. */
    static TerminalSize of(String text) {
        String[] numbers = text.strip().split(" ", 2);
        boolean isSize =
                numbers.length == 2 && numbers[0].matches("[1-9][0-9]{0,3}") && numbers[1].matches("[1-9][0-9]{0,3}");
        return isSize ? new TerminalSize(Integer.parseInt(numbers[0]), Integer.parseInt(numbers[1])) : USUAL;
    }
}
