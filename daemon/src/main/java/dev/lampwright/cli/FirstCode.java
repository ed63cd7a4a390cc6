package dev.lampwright.cli;

import dev.lampwright.page.FirstToken;
import dev.lampwright.page.PageAddress;
import dev.lampwright.page.PageCode;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/** The address and the code of the page on which lights are fitted for the first time. */
final class FirstCode {
    private final Path folder;

    /**
     * Finds the service's folder for state.
     *
     * @param environment the process's
     */
    FirstCode(Map<String, String> environment) {
        folder = StateFile.folder(environment).orElse(StateFile.OF_THE_SERVICE);
    }

    /**
     * Prints them.
     *
     * @param config where there is no configuration
     * @param coloured whether black and white are available
     * @param out where to
     * @throws IOException if there is no token, or no address for others; the message says why and what to do
     */
    void print(Path config, boolean coloured, PrintWriter out) throws IOException {
        FirstToken token = FirstToken.find(folder)
                .orElseThrow(() ->
                        new IOException(config + ": there is no configuration, and no token for the first fitting in "
                                + FirstToken.in(folder) + "; run sudo systemctl restart lampwright, and see"
                                + " journalctl -u lampwright"));
        List<String> addresses = PageAddress.ofFirst(token.port());
        if (addresses.isEmpty()) {
            throw new IOException(
                    "this computer has no address that others can reach; connect it to your network, and run sudo"
                            + " lampwright page again");
        }
        addresses.forEach(out::println);
        PageCode.of(token.after(addresses.get(0))).lines(coloured).forEach(out::println);
        out.println(
                "To fit the lights, point the camera of a phone in the same network at this code, plug in the controller, and"
                        + " follow the questions.");
        out.println(
                "The code carries a token, which opens the page until the lights are fitted. To type it elsewhere, read it with: sudo head -n 1 "
                        + FirstToken.in(folder));
    }
}
