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
 * @param holdoverMillis time without a frame until {@code whenSilent} is shown, 100 to 60000
 * @param whenSilent what is shown then
 * @param ceilingsMilliamps ceiling of each supply, in mA, 1 to 4 of them, 0 to 65535 each
 * @param dimmers dimmers in use, from the controller's first on
 * @param runs the runs that the strip is cut into, one per data line, in pixel order; empty if all of it is on the first line
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
        List<Dimmer> dimmers,
        List<Run> runs) {
    /** The maximum length of a set-up's body in bytes: four supplies, 255 dimmers and 8 runs. */
    public static final int LARGEST_BODY = bodyBytes(4, 255) + 1 + 3 * 8;

    /** The maximum number of runs of a strip. */
    public static final int MOST_RUNS = 8;

    /** The maximum number of supplies in a set-up. */
    public static final int MOST_SUPPLIES = 4;
    /** Shortest holdover, in ms. */
    public static final int SHORTEST_HOLDOVER_MS = 100;
    /** Longest holdover, in ms. */
    public static final int LONGEST_HOLDOVER_MS = 60_000;

    /** The offset of the pixel count in the body. */
    public static final int PIXELS_AT = 0;

    private static final int PLACES = 4;
    private static final int CHANNELS_AT = 2;
    private static final int ORDER_AT = 3;
    private static final int CURRENTS_AT = 7;
    private static final int DARK_AT = 15;
    private static final int STRIP_SUPPLY_AT = 17;
    private static final int HOLDOVER_AT = 18;
    private static final int WHEN_SILENT_AT = 20;
    private static final int SUPPLIES_AT = 21;
    /** Bytes per dimmer in the body of a set-up. */
    public static final int DIMMER_BYTES = 5;

    private static final int RUN_BYTES = 3;

    /**
     * One plain dimmed light.
     *
     * @param supply index of the supply that feeds it
     * @param fullMilliamps its current at full duty, in mA, 0 to 65535
     * @param silentDuty its duty once the holdover is over, 0 to 65535
     */
    public record Dimmer(int supply, int fullMilliamps, int silentDuty) {}

    /**
     * A part of the strip on its own data line.
     *
     * @param output number of the data line, 0 to 7
     * @param pixels its pixels, 0 to 65535
     */
    public record Run(int output, int pixels) {}

    /** A strip in one piece. */
    public Setup(
            int pixels,
            String order,
            List<Integer> channelMicroamps,
            int darkMicroamps,
            int stripSupply,
            int holdoverMillis,
            WhenSilent whenSilent,
            List<Integer> ceilingsMilliamps,
            List<Dimmer> dimmers) {
        this(
                pixels,
                order,
                channelMicroamps,
                darkMicroamps,
                stripSupply,
                holdoverMillis,
                whenSilent,
                ceilingsMilliamps,
                dimmers,
                List.of());
    }

    /** Keeps copies of the lists. */
    public Setup {
        runs = List.copyOf(runs);
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
     * Bytes of the body of this set-up.
     *
     * @return 25 to {@link #LARGEST_BODY}
     */
    public int bodyBytes() {
        int cut = runs.isEmpty() ? 0 : 1 + RUN_BYTES * runs.size();
        return bodyBytes(ceilingsMilliamps.size(), dimmers.size()) + cut;
    }

    /**
     * Pixels of the longest run, or of a strip in one piece.
     *
     * @return 0 to {@link #pixels}: it determines the time of a frame
     */
    public int longestRun() {
        return runs.stream().mapToInt(Run::pixels).max().orElse(pixels);
    }

    /**
     * Bytes of the body of a set-up without runs; with runs, the offset of these.
     *
     * @param supplies number of supplies, 1 to 4
     * @param dimmers dimmers in use, 0 to 255
     * @return 25 to {@link #LARGEST_BODY}
     */
    public static int bodyBytes(int supplies, int dimmers) {
        return dimmersAt(supplies) + 1 + DIMMER_BYTES * dimmers;
    }

    /**
     * The same with different ceilings.
     *
     * @param ceilings of each supply, in mA
     * @return another set-up
     */
    public Setup withCeilings(List<Integer> ceilings) {
        return new Setup(
                pixels,
                order,
                channelMicroamps,
                darkMicroamps,
                stripSupply,
                holdoverMillis,
                whenSilent,
                ceilings,
                dimmers,
                runs);
    }

    /**
     * The same lights with fewer pixels that draw the same total current, all on the first data line.
     *
     * @param fewer how many, 1 or more
     * @return another set-up; one of its pixels may draw more than the wire format allows
     */
    public Setup shortenedTo(int fewer) {
        return new Setup(
                fewer,
                order,
                channelMicroamps.stream().map(each -> shared(each, fewer)).toList(),
                shared(darkMicroamps, fewer),
                stripSupply,
                holdoverMillis,
                whenSilent,
                ceilingsMilliamps,
                dimmers);
    }

    private int shared(int microamps, int fewer) {
        return (int) ((long) microamps * pixels / fewer);
    }

    /**
     * The offset of the dimmer count in the body.
     *
     * @param supplies number of supplies, 1 to 4
     * @return its offset
     */
    public static int dimmersAt(int supplies) {
        return SUPPLIES_AT + 1 + 2 * supplies;
    }

    /**
     * The number of data lines that runs need.
     *
     * @param runs the runs of a strip; empty for the whole strip on the first data line
     * @return 1 or more
     */
    public static int dataLines(List<Run> runs) {
        return runs.stream().mapToInt(run -> run.output() + 1).max().orElse(1);
    }

    /**
     * The length that a too short body of a set-up should have, as far as it shows.
     *
     * @param message a {@code SETUP} that {@link #read} found too short
     * @return the right length in bytes; for a body too short to show it, that with one supply and no dimmers
     */
    public static int rightBodyBytes(Message message) {
        int supplies = message.u8Or(SUPPLIES_AT, 1);
        return bodyBytes(supplies, message.u8Or(dimmersAt(supplies), 0));
    }

    /**
     * Writes it.
     *
     * @param writer where to write
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
        if (!runs.isEmpty()) {
            writer.u8(runs.size());
            runs.forEach(run -> writer.u8(run.output).u16(run.pixels));
        }
        return writer.finish();
    }

    /**
     * Reads the body of a {@code SETUP} or {@code IN_FORCE}.
     *
     * @param message the message
     * @return its content
     * @throws MalformedMessageException if the body is too short, or a field is out of its range
     */
    public static Setup read(Message message) throws MalformedMessageException {
        int dimmersAt = dimmersAt(inRange(message.u8(SUPPLIES_AT), 1, MOST_SUPPLIES, SUPPLIES_AT));
        return read(message, readRuns(message, dimmersAt));
    }

    /**
     * Reads the body of a {@code SETUP} like a controller with one data line, which skips the runs.
     *
     * @param message the message
     * @return its content, without its runs
     * @throws MalformedMessageException if the body is too short, or a field is out of its range
     */
    public static Setup readUncut(Message message) throws MalformedMessageException {
        return read(message, List.of());
    }

    private static Setup read(Message message, List<Run> runs) throws MalformedMessageException {
        int supplies = inRange(message.u8(SUPPLIES_AT), 1, MOST_SUPPLIES, SUPPLIES_AT);
        int channels = inRange(message.u8(CHANNELS_AT), 3, PLACES, CHANNELS_AT);
        List<Integer> ceilings = new ArrayList<>();
        for (int supply = 0; supply < supplies; supply++) {
            ceilings.add(message.u16(SUPPLIES_AT + 1 + 2 * supply));
        }
        return new Setup(
                message.u16(PIXELS_AT),
                readOrder(message, channels),
                readCurrents(message, channels),
                message.u16(DARK_AT),
                inRange(message.u8(STRIP_SUPPLY_AT), 0, supplies - 1, STRIP_SUPPLY_AT),
                inRange(message.u16(HOLDOVER_AT), SHORTEST_HOLDOVER_MS, LONGEST_HOLDOVER_MS, HOLDOVER_AT),
                WhenSilent.read(message, WHEN_SILENT_AT),
                ceilings,
                readDimmers(message, dimmersAt(supplies), supplies),
                runs);
    }

    /**
     * Whether letters are a valid order of channels.
     *
     * @param order letters to check
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
        boolean rightFourth = channels == PLACES || message.u8(ORDER_AT + PLACES - 1) == 0;
        if (!rightFourth || !isOrder(order.toString())) {
            throw MalformedMessageException.outOfRange(ORDER_AT);
        }
        return order.toString();
    }

    private static List<Integer> readCurrents(Message message, int channels) throws MalformedMessageException {
        List<Integer> currents = new ArrayList<>();
        for (int place = 0; place < PLACES; place++) {
            currents.add(message.u16(CURRENTS_AT + 2 * place));
        }
        if (channels < PLACES && currents.get(PLACES - 1) != 0) {
            throw MalformedMessageException.outOfRange(CURRENTS_AT);
        }
        return currents.subList(0, channels);
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

    /* Runs follow the dimmers, where a controller that does not know them stops reading. Those of a SETUP make up the strip. */
    private static List<Run> readRuns(Message message, int dimmersAt) throws MalformedMessageException {
        int at = dimmersAt + 1 + DIMMER_BYTES * message.u8(dimmersAt);
        List<Run> runs = new ArrayList<>();
        int left = message.u16(PIXELS_AT);
        int count = inRange(message.u8Or(at, 0), 0, MOST_RUNS, at);
        for (int i = 0; i < count; i++) {
            int entry = at + 1 + RUN_BYTES * i;
            Run run = new Run(inRange(message.u8(entry), 0, MOST_RUNS - 1, entry), message.u16(entry + 1));
            if (runs.stream().anyMatch(other -> other.output == run.output)) {
                throw MalformedMessageException.outOfRange(entry);
            }
            runs.add(run);
            left -= run.pixels;
        }
        if (count > 0 && left != 0) {
            throw MalformedMessageException.outOfRange(at + 2);
        }
        return runs;
    }

    private static int inRange(int value, int least, int most, int at) throws MalformedMessageException {
        if (value < least || value > most) {
            throw MalformedMessageException.outOfRange(at);
        }
        return value;
    }
}
