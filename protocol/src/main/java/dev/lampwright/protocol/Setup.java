package dev.lampwright.protocol;

import java.util.ArrayList;
import java.util.List;

/**
 * What is fitted to the controller and within what limits: the body of {@code SETUP} and of {@code IN_FORCE}.
 *
 * @param pixels pixels of the strip, 0 to 65535
 * @param order the strip's order of channels: a permutation of {@code RGB} or of {@code RGBW}
 * @param channelMicroamps current of each channel at full duty, in µA, in the strip's order, 0 to 65535 each
 * @param darkMicroamps current of a dark pixel, in µA, 0 to 65535
 * @param stripSupply index of the supply that feeds the strip
 * @param holdoverMillis how long without a frame until {@code whenSilent} is shown, 100 to 60000
 * @param whenSilent what is shown then
 * @param ceilingsMilliamps ceiling of each supply, in mA, 1 to 4 of them, 0 to 65535 each
 * @param dimmers dimmers in use, from the controller's first on
 */
public record Setup(
        int pixels,
        String order,
        List<Integer> channelMicroamps,
        int darkMicroamps,
        int stripSupply,
        int holdoverMillis,
        WhenSilent whenSilent,
        List<Integer> ceilingsMilliamps,
        List<Dimmer> dimmers) {
    /** Most bytes that the body of a set-up can have: four supplies and 255 dimmers. */
    public static final int LARGEST_BODY = 23 + 4 * 2 + 255 * 5;

    /** Most supplies that a set-up can name. */
    public static final int MOST_SUPPLIES = 4;
    /** Shortest holdover, in ms. */
    public static final int SHORTEST_HOLDOVER_MS = 100;
    /** Longest holdover, in ms. */
    public static final int LONGEST_HOLDOVER_MS = 60_000;

    private static final int PLACES = 4;
    private static final int CHANNELS_AT = 2;
    private static final int ORDER_AT = 3;
    private static final int CURRENTS_AT = 7;
    private static final int DARK_AT = 15;
    private static final int STRIP_SUPPLY_AT = 17;
    private static final int HOLDOVER_AT = 18;
    private static final int WHEN_SILENT_AT = 20;
    private static final int SUPPLIES_AT = 21;

    /**
     * One plain dimmed light.
     *
     * @param supply index of the supply that feeds it
     * @param fullMilliamps its current at full duty, in mA, 0 to 65535
     * @param silentDuty its duty once the holdover is over, 0 to 65535
     */
    public record Dimmer(int supply, int fullMilliamps, int silentDuty) {}

    /** Keeps copies of the lists. */
    public Setup {
        channelMicroamps = List.copyOf(channelMicroamps);
        ceilingsMilliamps = List.copyOf(ceilingsMilliamps);
        dimmers = List.copyOf(dimmers);
    }

    /**
     * Channels of one pixel.
     *
     * @return 3 or 4
     */
    public int channels() {
        return order.length();
    }

    /**
     * Bytes of the strip in one frame.
     *
     * @return pixels × channels
     */
    public int stripBytes() {
        return pixels * channels();
    }

    /**
     * Writes this.
     *
     * @param writer where to
     * @param type {@code SETUP} or {@code IN_FORCE}
     * @param sequence sequence number
     * @return bytes of the writer's wire
     */
    public int write(MessageWriter writer, MessageType type, int sequence) {
        writer.begin(type, sequence).u16(pixels).u8(channels());
        for (int place = 0; place < PLACES; place++) {
            writer.u8(place < channels() ? order.charAt(place) : 0);
        }
        for (int place = 0; place < PLACES; place++) {
            writer.u16(place < channels() ? channelMicroamps.get(place) : 0);
        }
        writer.u16(darkMicroamps).u8(stripSupply).u16(holdoverMillis).u8(whenSilent.code());
        writer.u8(ceilingsMilliamps.size());
        ceilingsMilliamps.forEach(writer::u16);
        writer.u8(dimmers.size());
        dimmers.forEach(
                dimmer -> writer.u8(dimmer.supply).u16(dimmer.fullMilliamps).u16(dimmer.silentDuty));
        return writer.finish();
    }

    /**
     * Reads the body of a {@code SETUP} or {@code IN_FORCE}.
     *
     * @param message the message
     * @return what it says
     * @throws MalformedMessageException if the body is too short, or a field is out of its range
     */
    public static Setup read(Message message) throws MalformedMessageException {
        int supplies = inRange(message.u8(SUPPLIES_AT), 1, MOST_SUPPLIES, SUPPLIES_AT);
        int channels = inRange(message.u8(CHANNELS_AT), 3, PLACES, CHANNELS_AT);
        List<Integer> currents = new ArrayList<>();
        for (int place = 0; place < channels; place++) {
            currents.add(message.u16(CURRENTS_AT + 2 * place));
        }
        List<Integer> ceilings = new ArrayList<>();
        for (int supply = 0; supply < supplies; supply++) {
            ceilings.add(message.u16(SUPPLIES_AT + 1 + 2 * supply));
        }
        return new Setup(
                message.u16(0),
                readOrder(message, channels),
                currents,
                message.u16(DARK_AT),
                inRange(message.u8(STRIP_SUPPLY_AT), 0, supplies - 1, STRIP_SUPPLY_AT),
                inRange(message.u16(HOLDOVER_AT), SHORTEST_HOLDOVER_MS, LONGEST_HOLDOVER_MS, HOLDOVER_AT),
                WhenSilent.of(message.u8(WHEN_SILENT_AT), WHEN_SILENT_AT),
                ceilings,
                readDimmers(message, SUPPLIES_AT + 1 + 2 * supplies, supplies));
    }

    /**
     * Whether letters are an order of channels that a strip can have.
     *
     * @param order letters to look at
     * @return true for a permutation of {@code RGB} or {@code RGBW}
     */
    public static boolean isOrder(String order) {
        String sorted = order.chars()
                .sorted()
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        return sorted.equals("BGR") || sorted.equals("BGRW");
    }

    private static String readOrder(Message message, int channels) throws MalformedMessageException {
        StringBuilder order = new StringBuilder();
        for (int place = 0; place < channels; place++) {
            order.append((char) message.u8(ORDER_AT + place));
        }
        if (!isOrder(order.toString())) {
            throw MalformedMessageException.outOfRange(ORDER_AT);
        }
        return order.toString();
    }

    private static List<Dimmer> readDimmers(Message message, int at, int supplies) throws MalformedMessageException {
        List<Dimmer> dimmers = new ArrayList<>();
        int count = message.u8(at);
        for (int i = 0; i < count; i++) {
            int entry = at + 1 + 5 * i;
            int supply = inRange(message.u8(entry), 0, supplies - 1, entry);
            dimmers.add(new Dimmer(supply, message.u16(entry + 1), message.u16(entry + 3)));
        }
        return dimmers;
    }

    private static int inRange(int value, int least, int most, int at) throws MalformedMessageException {
        if (value < least || value > most) {
            throw MalformedMessageException.outOfRange(at);
        }
        return value;
    }
}
