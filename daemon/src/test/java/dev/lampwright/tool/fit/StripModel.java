package dev.lampwright.tool.fit;

import java.util.ArrayList;
import java.util.List;

/**
 * A strip of pixels that take bytes from the line: each takes as many as it has channels and passes on the rest, so a wrong number of
 * channels shifts the colours along, and the remainder at the end lights nothing.
 *
 * @param order the strip's secret order
 * @param pixels its secret length
 * @param channelMilliamps current of each channel at full, in its order, in mA
 * @param idleMilliamps current of a dark pixel, in mA
 */
record StripModel(String order, int pixels, List<Double> channelMilliamps, double idleMilliamps) {
    /**
     * The light of a pixel, 0 to 255 each.
     *
     * @param white of the white channel, 0 if there is none
     */
    record Pixel(int red, int green, int blue, int white) {
        boolean lit() {
            return red + green + blue + white > 0;
        }

        /** The colour as somebody would name it. */
        SecretStrip.Seen hue() {
            boolean coloured = red + green + blue > 0;
            if (white > 0 || (red > 0 && green > 0 && blue > 0)) {
                return coloured && white > 0 ? SecretStrip.Seen.DIFFERENT : SecretStrip.Seen.WHITE;
            }
            int most = Math.max(red, Math.max(green, blue));
            return most == red ? SecretStrip.Seen.RED : most == green ? SecretStrip.Seen.GREEN : SecretStrip.Seen.BLUE;
        }
    }

    /** What is seen, pixel by pixel, when bytes are clocked in. Pixels without bytes are dark. */
    List<Pixel> clock(byte[] bytes) {
        List<Pixel> seen = new ArrayList<>();
        for (int pixel = 0; pixel < pixels; pixel++) {
            seen.add(new Pixel(
                    channel(bytes, pixel, 'R'),
                    channel(bytes, pixel, 'G'),
                    channel(bytes, pixel, 'B'),
                    channel(bytes, pixel, 'W')));
        }
        return seen;
    }

    /** What the whole strip draws, in mA. */
    double milliamps(byte[] bytes) {
        double sum = pixels * idleMilliamps;
        for (int i = 0; i < Math.min(bytes.length, pixels * order.length()); i++) {
            sum += (bytes[i] & 0xFF) / 255.0 * channelMilliamps.get(i % order.length());
        }
        return sum;
    }

    private int channel(byte[] bytes, int pixel, char letter) {
        int place = order.indexOf(letter);
        int at = pixel * order.length() + place;
        return place < 0 || at >= bytes.length ? 0 : bytes[at] & 0xFF;
    }
}
