package dev.lampwright.tool.bench;

import dev.lampwright.colour.ScreenPixels;
import dev.lampwright.config.Config;
import dev.lampwright.config.ControllerSpec;
import dev.lampwright.config.LightSpec;
import dev.lampwright.cue.Wishes;
import dev.lampwright.engine.Chain;
import dev.lampwright.look.LookSpec;
import dev.lampwright.look.Zone;
import dev.lampwright.protocol.Frame;
import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** A look, frame by frame, drawn as the daemon draws it for the strip, but only for the page that asks. */
final class LookFilm {
    private static final int COLOURS = 3;
    private static final double FULL_DUTY = 65_535;
    private static final double FINEST = 10_000;
    /** Longer than any preview, so that a printer that is played does not fall silent. */
    private static final Duration NEVER_SILENT = Duration.ofDays(1);

    private final Config config;
    private final LightSpec light;
    private final FilmPrinter printer;
    private final Cut cut;
    private final ByteArrayOutputStream strip = new ByteArrayOutputStream();
    private final List<List<Double>> duties = new ArrayList<>();
    private final List<Integer> milliamps = new ArrayList<>();
    private final List<Map<String, Object>> shown = new ArrayList<>();

    /**
     * What of it is wanted.
     *
     * @param rate frames a second
     * @param fromSeconds when the first frame is; the look begins at 0
     * @param seconds how long it lasts
     * @param guards whether the guards hold it
     */
    record Cut(int rate, double fromSeconds, double seconds, boolean guards) {
        /** The longest, in s. */
        static final int LONGEST_S = 10;
        /** The most frames in a second. */
        static final int MOST_RATE = 20;
        /** The latest beginning, in s. */
        static final int LATEST_S = 60;

        static Cut of(BenchBody body) throws BenchRefusal {
            return new Cut(
                    body.whole("rate", 1, MOST_RATE, MOST_RATE),
                    body.number("from_s", 0, LATEST_S, 0),
                    body.number("seconds", 0, LONGEST_S, LONGEST_S),
                    body.flag("guards", true));
        }

        int first() {
            return (int) Math.round(fromSeconds * rate);
        }

        int frames() {
            return Math.max(1, (int) Math.round(seconds * rate));
        }
    }

    /** What takes a frame that is wanted. */
    private interface Taker {
        void take(Chain chain, Frame frame);
    }

    private LookFilm(Config config, LightSpec shown, FilmPrinter printer, Cut cut) {
        this.config = cut.guards() ? config : open(config);
        LightSpec heard = shown.silentAfter(NEVER_SILENT);
        this.light = cut.guards() ? heard : heard.guardedBy(heard.guard().withFlashing());
        this.printer = printer;
        this.cut = cut;
    }

    private static Config open(Config config) {
        return config.with(
                new ControllerSpec(
                        config.controller().port(), config.controller().baud(), LookCurrent.open(config.setup())),
                config.light());
    }

    /**
     * Draws a look, or what the cues put on.
     *
     * @param config whose lights
     * @param shown what is shown on them
     * @param printer what the printer does
     * @param cut what of it is wanted
     * @param patience ends it
     * @return an object of JSON
     */
    static Map<String, Object> of(Config config, LightSpec shown, FilmPrinter printer, Cut cut, DrawPatience patience)
            throws BenchRefusal {
        return new LookFilm(config, shown, printer, cut).whole(patience);
    }

    private Map<String, Object> whole(DrawPatience patience) throws BenchRefusal {
        ScreenPixels screen =
                new ScreenPixels(config.setup().order(), config.fitting().pixels());
        Chain chain = draw(patience, (drawn, frame) -> {
            strip.writeBytes(screen.of(frame.strip()));
            duties.add(Arrays.stream(frame.duties())
                    .mapToObj(duty -> Math.rint(duty / FULL_DUTY * FINEST) / FINEST)
                    .toList());
            milliamps.add(drawn.guard().stripMilliamps());
        });
        Map<String, Object> film = film(chain, config.fitting().pixels());
        film.put("duties", duties);
        film.put("mA", milliamps);
        film.put("dimmed", chain.guard().dimmedFrames());
        film.put("held", chain.guard().heldFrames());
        return film;
    }

    /**
     * Draws a look that is one layer, and shows only the zone that it is on, from its beginning to its end.
     *
     * @param config whose lights
     * @param layer the look
     * @param printer what the printer does
     * @param cut what of it is wanted
     * @param pixels how many pixels the zone is shown as
     * @param patience ends it
     * @return an object of JSON
     */
    static Map<String, Object> ofLayer(
            Config config, LookSpec layer, FilmPrinter printer, Cut cut, int pixels, DrawPatience patience)
            throws BenchRefusal {
        LookFilm film = new LookFilm(config, config.light().showing(layer), printer, cut);
        return film.zone(layer.layers().get(0).zone(), pixels, patience);
    }

    private Map<String, Object> zone(Zone zone, int pixels, DrawPatience patience) throws BenchRefusal {
        int[] places = places(zone, pixels);
        Chain chain = draw(patience, (drawn, frame) -> {
            float[] rgba = drawn.light().rgba();
            for (int place : places) {
                for (int colour = 0; colour < COLOURS; colour++) {
                    strip.write(ScreenPixels.encoded(Math.max(0, Math.min(1, rgba[4 * place + colour]))));
                }
            }
        });
        return film(chain, places.length);
    }

    /** For each pixel that is shown, that of the canvas. */
    private static int[] places(Zone zone, int pixels) {
        int[] along = new int[zone.length()];
        Arrays.fill(along, zone.pixel(0));
        for (int index = zone.pixelCount() - 1; index >= 0; index--) {
            along[zone.place(index)] = zone.pixel(index);
        }
        int shown = pixels == 0 ? along.length : pixels;
        int[] places = new int[shown];
        Arrays.setAll(places, i -> along[(int) ((long) i * along.length / shown)]);
        return places;
    }

    private Map<String, Object> film(Chain chain, int pixels) {
        Map<String, Object> film = new LinkedHashMap<>();
        film.put("look", chain.look());
        film.put("pixels", pixels);
        film.put("frames", cut.frames());
        film.put("rate", cut.rate());
        film.put("from_s", cut.fromSeconds());
        film.put("shown", shown);
        film.put("strip", Base64.getEncoder().encodeToString(strip.toByteArray()));
        return film;
    }

    /** Notes from which frame on the printer is in another state, or another look is on. */
    private void show(int frame, String state, String look) {
        Map<String, Object> last = shown.isEmpty() ? Map.of() : shown.get(shown.size() - 1);
        if (!state.equals(last.get("state")) || !look.equals(last.get("look"))) {
            Map<String, Object> now = new LinkedHashMap<>();
            now.put("frame", frame);
            now.put("state", state);
            now.put("look", look);
            shown.add(now);
        }
    }

    /** From the look's beginning on, since what is drawn may depend on what was drawn before. */
    private Chain draw(DrawPatience patience, Taker taker) throws BenchRefusal {
        Chain chain = printer.chain(config, light, cut.rate());
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        for (int i = 0; i < cut.first() + cut.frames(); i++) {
            patience.check();
            long nanos = printer.startNanos() + TimeUnit.SECONDS.toNanos(i) / cut.rate();
            double seconds = (double) (i - cut.first()) / cut.rate();
            chain.make(printer.at(chain, seconds, nanos, patience), Wishes.NONE, nanos, frame);
            if (i >= cut.first()) {
                show(i - cut.first(), chain.state().word(), chain.look());
                taker.take(chain, frame);
            }
        }
        return chain;
    }
}
