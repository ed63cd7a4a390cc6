package dev.lampwright.page;

import com.google.zxing.ChecksumException;
import com.google.zxing.FormatException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.decoder.Decoder;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What another library, ZXing, reads from a code: it shares nothing with the one that generates them. */
public final class QrReading {
    /** Light modules around a code. Source: ISO/IEC 18004, "quiet zone" (number from memory). */
    private static final int QUIET = 4;

    private static final Pattern MODULE = Pattern.compile("M(\\d+) (\\d+)h1v1h-1z");

    private QrReading() {}

    /** Reads the lines that a terminal shows; light modules are the ones drawn. */
    public static String ofLines(List<String> lines) {
        List<String> plain = lines.stream()
                .map(line -> line.replaceAll("\033\\[[0-9;]*m", ""))
                .toList();
        int size = plain.get(0).length();
        boolean[][] dark = new boolean[size][size];
        for (int y = 0; y < size; y++) {
            for (int x = 0; x < size; x++) {
                char half = plain.get(y / 2).charAt(x);
                dark[y][x] = half != '█' && half != (y % 2 == 0 ? '▀' : '▄');
            }
        }
        return read(dark);
    }

    /** Reads a picture of paths. */
    static String ofSvg(String svg) {
        int size = Integer.parseInt(svg.replaceAll("(?s).*viewBox=\"0 0 (\\d+) .*", "$1"));
        boolean[][] dark = new boolean[size][size];
        Matcher module = MODULE.matcher(svg);
        while (module.find()) {
            dark[Integer.parseInt(module.group(2))][Integer.parseInt(module.group(1))] = true;
        }
        return read(dark);
    }

    private static String read(boolean[][] dark) {
        int size = dark.length - 2 * QUIET;
        BitMatrix matrix = new BitMatrix(size);
        for (int y = 0; y < dark.length; y++) {
            for (int x = 0; x < dark.length; x++) {
                boolean inside = Math.min(x, y) >= QUIET && Math.max(x, y) < QUIET + size;
                if (dark[y][x] && !inside) {
                    throw new AssertionError("dark beyond the edge, at " + x + " " + y);
                }
                if (dark[y][x]) {
                    matrix.set(x - QUIET, y - QUIET);
                }
            }
        }
        try {
            return new Decoder().decode(matrix).getText();
        } catch (ChecksumException | FormatException e) {
            throw new AssertionError(e);
        }
    }
}
