package dev.lampwright.tool.picture;

import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.IndexColorModel;
import java.util.LinkedHashMap;
import java.util.Map;

/** Reduces a picture to 256 colours: its own if there are no more, otherwise rounded until there are. */
final class Palette {
    private static final int MOST = 256;
    private static final int COARSEST_BITS = 6;

    private Palette() {}

    /** The same picture with a colour table. */
    static BufferedImage indexed(BufferedImage image) {
        int bits = 0;
        while (bits < COARSEST_BITS && table(image, bits).size() > MOST) {
            bits++;
        }
        Map<Integer, Integer> table = table(image, bits);
        BufferedImage indexed =
                new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_BYTE_INDEXED, model(table));
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int index = table.get(rounded(image.getRGB(x, y), bits));
                indexed.getRaster().setSample(x, y, 0, index);
            }
        }
        return indexed;
    }

    private static Map<Integer, Integer> table(BufferedImage image, int bits) {
        Map<Integer, Integer> table = new LinkedHashMap<>();
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                table.putIfAbsent(rounded(image.getRGB(x, y), bits), table.size());
            }
        }
        return table;
    }

    private static int rounded(int tone, int bits) {
        return level(tone >> 16, bits) << 16 | level(tone >> 8, bits) << 8 | level(tone, bits);
    }

    /** The steps go from darkest to brightest, so that black and white stay. */
    private static int level(int tone, int bits) {
        int steps = (1 << (8 - bits)) - 1;
        int step = ((tone & 0xFF) * steps + 127) / 255;
        return (step * 255 + steps / 2) / steps;
    }

    private static IndexColorModel model(Map<Integer, Integer> table) {
        int[] colours = table.keySet().stream().mapToInt(Integer::intValue).toArray();
        return new IndexColorModel(8, colours.length, colours, 0, false, -1, DataBuffer.TYPE_BYTE);
    }
}
