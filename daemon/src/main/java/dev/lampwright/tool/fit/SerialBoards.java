package dev.lampwright.tool.fit;

import dev.lampwright.link.Inquiry;
import dev.lampwright.link.LineException;
import dev.lampwright.link.Port;
import dev.lampwright.link.Ports;
import dev.lampwright.link.SerialLine;
import dev.lampwright.protocol.Here;
import java.util.List;

/** Controllers at serial ports. */
public final class SerialBoards implements Boards {
    private final List<String> named;
    private final int baud;

    /**
     * Prepares to search.
     *
     * @param named ports to check; if empty, all ports of this machine
     * @param baud bits per second
     */
    public SerialBoards(List<String> named, int baud) {
        this.named = List.copyOf(named);
        this.baud = baud;
    }

    @Override
    public List<Boards.Candidate> look() {
        return named.isEmpty()
                ? Ports.list().stream().map(this::ask).toList()
                : named.stream().map(this::ask).toList();
    }

    @Override
    public Boards.Candidate ask(String port) {
        return ask(port, "");
    }

    @Override
    public ShownLight light(String port, Here here) {
        return new FittingLight(new SerialLine(port, baud), here.id(), System::nanoTime);
    }

    @Override
    public int baud() {
        return baud;
    }

    private Boards.Candidate ask(Port port) {
        String name = port.stablePath().isEmpty() ? port.path() : port.stablePath();
        return Ports.obstacle(port)
                .<Boards.Candidate>map(obstacle -> new Boards.Silent(name, obstacle))
                .orElseGet(() -> ask(name, port.description()));
    }

    private Boards.Candidate ask(String name, String description) {
        try {
            Here here = Inquiry.of(new SerialLine(name, baud), System::nanoTime);
            return new Boards.Answering(name, description, here);
        } catch (LineException e) {
            return new Boards.Silent(name, e.trouble());
        }
    }
}
