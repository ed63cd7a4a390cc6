package dev.lampwright.page;

import io.nayuki.qrcodegen.QrCode;
import java.util.ArrayList;
import java.util.List;

/**
 * An address as a code for a phone's camera. Source of the code: ISO/IEC 18004, QR code, through the library; it is surrounded by four
 * light modules, as its section 9.1 requires (number from memory).
 */
public final class PageCode {
    private static final int QUIET = 4;

    private final QrCode code;

    private PageCode(QrCode code) {
        this.code = code;
    }

    /**
     * Creates the code for a text.
     *
     * @param text an address, at most a few hundred characters
     * @return the code, readable with up to a seventh of it covered
     */
    public static PageCode of(String text) {
        return new PageCode(QrCode.encodeText(text, QrCode.Ecc.MEDIUM));
    }

    /**
     * The code for a terminal: two rows of modules per line, in half blocks.
     *
     * @param coloured whether black and white are available; if not, light modules are drawn, which suits a dark terminal
     * @return its lines
     */
    public List<String> lines(boolean coloured) {
        List<String> lines = new ArrayList<>();
        for (int y = -QUIET; y < code.size + QUIET; y += 2) {
            StringBuilder line = new StringBuilder(coloured ? "\033[97;40m" : "");
            for (int x = -QUIET; x < code.size + QUIET; x++) {
                line.append(half(isLight(x, y), y + 1 < code.size + QUIET && isLight(x, y + 1)));
            }
            lines.add(line.append(coloured ? "\033[0m" : "").toString());
        }
        return lines;
    }

    private static char half(boolean above, boolean below) {
        if (above) {
            return below ? '█' : '▀';
        }
        return below ? '▄' : ' ';
    }

    /** Modules beyond its edge are light. */
    private boolean isLight(int x, int y) {
        return !code.getModule(x, y);
    }

    /**
     * The code as a picture.
     *
     * @return SVG, black on white whatever surrounds it
     */
    public String svg() {
        int size = code.size + 2 * QUIET;
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < code.size; y++) {
            for (int x = 0; x < code.size; x++) {
                if (code.getModule(x, y)) {
                    path.append('M')
                            .append(x + QUIET)
                            .append(' ')
                            .append(y + QUIET)
                            .append("h1v1h-1z");
                }
            }
        }
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + size + ' ' + size
                + "\" shape-rendering=\"crispEdges\"><path fill=\"#fff\" d=\"M0 0h" + size + 'v' + size
                + "H0z\"/><path fill=\"#000\" d=\"" + path + "\"/></svg>";
    }
}
