package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.LightSpec;
import dev.lampwright.engine.Daemon;
import dev.lampwright.look.LookSpec;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The bench of one daemon: answers each request about looks. A request's path begins behind {@code bench/}; its rights have been checked.
 * Safe for many threads.
 */
public final class LookBench {
    /** No request is longer, in bytes, except one with a recording. */
    static final int MOST_BYTES = 65_536;

    private static final String LOOK = "look";
    private static final String SURE = "sure";
    private static final int MOST_CUES = 64;
    /** What neither draws nor writes a file, although the method is not GET. */
    private static final Set<String> AT_ONCE = Set.of("toml", "try/keep", "try/end");

    private static final Map<String, Object> DONE = Map.of("done", true);

    private final BenchFiles files;
    private final Daemon daemon;
    private final BenchWorker worker;
    private final SeenLooks seen = new SeenLooks();
    private final LookSaver saver;
    private final LookDrafts drafts;
    private final LookTrial trial;
    private final Recordings recordings;

    /**
     * Makes a bench.
     *
     * @param files where the daemon's looks are
     * @param daemon whose lights it is for
     * @param worker draws
     */
    public LookBench(BenchFiles files, Daemon daemon, BenchWorker worker) {
        this.files = files;
        this.daemon = daemon;
        this.worker = worker;
        drafts = new LookDrafts(files, worker.drafts());
        trial = new LookTrial(files, daemon, worker);
        recordings = new Recordings(daemon, files.recording());
        saver = new LookSaver(files, this::config, worker, seen);
    }

    /**
     * A request.
     *
     * @param method as HTTP has it
     * @param path names between slashes, such as {@code looks/printing}
     * @param query what follows the question mark
     * @param body JSON, or nothing
     * @param tab tells tabs of browsers apart; may be empty
     * @param mayWrite whether the person may save looks
     */
    public record Asked(String method, String path, String query, String body, String tab, boolean mayWrite) {}

    /**
     * Answers a request.
     *
     * @param asked the request
     * @return what to answer, whatever was asked
     */
    public BenchReply answer(Asked asked) {
        try {
            return BenchReply.of(mayWait(asked) ? worker.answer(() -> done(asked)) : done(asked));
        } catch (BenchRefusal e) {
            return e.reply();
        }
    }

    private static boolean mayWait(Asked asked) {
        return !asked.method().equals("GET") && !AT_ONCE.contains(asked.path());
    }

    private Map<String, Object> done(Asked asked) throws BenchRefusal {
        List<String> names = List.of(asked.path().split("/", -1));
        String what = asked.method() + " " + names.get(0);
        if (names.size() == 1) {
            return switch (what) {
                case "GET vocabulary" -> BenchVocabulary.of(config(), daemon.report());
                case "GET looks" -> looks(asked);
                case "POST check" -> check(asked);
                case "POST toml" -> toml(asked);
                case "POST preview" -> preview(asked);
                case "GET versions" -> Map.of("versions", saver.versions());
                case "GET cues" -> cues();
                case "PUT cues" -> saveCues(BenchBody.read(asked.body()));
                case "GET drafts" -> Map.of("drafts", drafts.all());
                case "GET recordings" -> recordings.all();
                case "POST try" -> tryOut(BenchBody.read(asked.body()));
                case "POST restore" -> restore(BenchBody.read(asked.body()));
                default -> throw nothing();
            };
        }
        if (names.size() == 2) {
            return switch (what) {
                case "GET looks" -> look(names.get(1));
                case "GET drafts" -> drafts.find(names.get(1));
                case "PUT drafts" -> keepDraft(names.get(1), BenchBody.read(asked.body()));
                case "DELETE drafts" -> discardDraft(names.get(1));
                case "PUT recordings" ->
                    recordings.keep(names.get(1), BenchBody.read(asked.body()).text("text"));
                case "DELETE recordings" -> recordings.discard(names.get(1));
                case "POST try" -> tryOn(names.get(1), BenchBody.read(asked.body()));
                case "PUT looks" -> save(names.get(1), BenchBody.read(asked.body()));
                case "DELETE looks" -> remove(names.get(1), BenchBody.ofQuery(asked.query()));
                default -> throw nothing();
            };
        }
        if (what.equals("POST looks") && names.size() == 3 && names.get(2).equals("rename")) {
            BenchBody body = BenchBody.read(asked.body());
            return saver.rename(names.get(1), body.text("to"), body.text("base"), body.flag(SURE, false));
        }
        throw nothing();
    }

    private Map<String, Object> save(String name, BenchBody body) throws BenchRefusal {
        return saver.save(BenchLook.of(name, body), body.text("base"), body.flag(SURE, false));
    }

    private Map<String, Object> remove(String name, BenchBody query) throws BenchRefusal {
        return saver.remove(name, query.text("base"), query.text(SURE).equals("true"));
    }

    private Map<String, Object> keepDraft(String name, BenchBody body) throws BenchRefusal {
        drafts.keep(name, body);
        return DONE;
    }

    private Map<String, Object> discardDraft(String name) throws BenchRefusal {
        drafts.discard(name);
        return DONE;
    }

    private Map<String, Object> tryOut(BenchBody body) throws BenchRefusal {
        return trial.begin(look(body), body);
    }

    private Map<String, Object> tryOn(String what, BenchBody body) throws BenchRefusal {
        return switch (what) {
            case "keep" -> trial.keep(body);
            case "end" -> trial.end(body);
            default -> throw nothing();
        };
    }

    private Map<String, Object> cues() throws BenchRefusal {
        LookPlans plans = saver.plans();
        LookShelves.From from = plans.cuesIn();
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("version", LookSaver.cuesVersion(plans));
        told.put("writes", saver.place().get("writes"));
        told.put("from", from.word());
        told.put("file", files.path(from).toString());
        told.put(
                "replaces",
                plans.shelves().cuesBelow(from).map(LookShelves.From::word).orElse(""));
        told.put("look", daemon.report().light().look());
        List<Map<String, Object>> own =
                plans.shelves().cues().map(LookShelves.Cues::cues).orElse(List.of());
        told.put("cues", CueList.of(own, from.word(), daemon.cuesHolding()));
        return told;
    }

    private Map<String, Object> saveCues(BenchBody body) throws BenchRefusal {
        List<Map<String, Object>> cues = body.tables("cues");
        if (cues.size() > MOST_CUES) {
            throw new BenchRefusal(400, "too_many_cues", "there are more than " + MOST_CUES + " cues")
                    .with("most", MOST_CUES);
        }
        return saver.saveCues(cues, body.text("base"), body.flag(SURE, false));
    }

    private Map<String, Object> restore(BenchBody body) throws BenchRefusal {
        return saver.restore(body.text("id"), body.text("base"), body.flag(SURE, false));
    }

    private static BenchRefusal nothing() {
        return new BenchRefusal(404, "nothing", "there is nothing here");
    }

    private Config config() {
        return daemon.tap().config();
    }

    private LookShelves shelves() throws BenchRefusal {
        return saver.plans().shelves();
    }

    private Map<String, Object> looks(Asked asked) throws BenchRefusal {
        Map<String, Object> all = new LinkedHashMap<>();
        all.putAll(saver.place());
        all.put("may_edit", asked.mayWrite());
        all.put(
                "looks",
                new LookList(config(), shelves(), daemon.report().light().look()).all());
        return all;
    }

    private Map<String, Object> look(String name) throws BenchRefusal {
        LookShelves shelves = shelves();
        LookShelves.Found found = shelves.find(name).orElseThrow(() -> BenchRefusal.noLook(name));
        seen.add(found);
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("name", name);
        told.put("from", found.from().word());
        told.put(
                "replaces",
                shelves.below(name)
                        .map(LookShelves.Found::from)
                        .map(LookShelves.From::word)
                        .orElse(""));
        told.put("version", found.version());
        told.put(LOOK, found.look().table());
        told.put("toml", found.toml());
        told.put("swatch_layers", swatchLayers(found.look()));
        told.put("sentences", LookSentences.of(found.look()));
        return told;
    }

    private int swatchLayers(BenchLook look) {
        return look.table().get("swatch") instanceof String swatch
                ? config().light()
                        .look(swatch)
                        .map(LookSpec::layers)
                        .map(List::size)
                        .orElse(0)
                : 0;
    }

    private static BenchLook look(BenchBody body) throws BenchRefusal {
        String name = body.text("name");
        return BenchLook.of(name.isEmpty() ? "new" : name, body);
    }

    private Map<String, Object> toml(Asked asked) throws BenchRefusal {
        return Map.of("toml", look(BenchBody.read(asked.body())).toml());
    }

    private Map<String, Object> check(Asked asked) throws BenchRefusal {
        BenchBody body = BenchBody.read(asked.body());
        BenchLook look = look(body);
        boolean alike = body.flag("alike", false);
        EditPlan plan = saver.planned(look);
        return worker.run(
                tab(asked, "check"), patience -> LookJudge.judge(files, plan, look, alike, worker.memory(), patience));
    }

    private static String tab(Asked asked, String what) {
        return asked.tab().isEmpty() ? "" : what + " " + asked.tab();
    }

    private Map<String, Object> preview(Asked asked) throws BenchRefusal {
        BenchBody body = BenchBody.read(asked.body());
        LookFilm.Cut cut = LookFilm.Cut.of(body);
        String name = body.text("name");
        return worker.run(tab(asked, "preview"), patience -> {
            if (!body.has(LOOK)) {
                return film(config(), name, body, cut, patience);
            }
            BenchLook whole = look(body);
            if (body.has("layer")) {
                return layer(whole, body, cut, patience);
            }
            return film(read(whole), whole.name(), body, cut, patience);
        });
    }

    private Config read(BenchLook look) throws BenchRefusal {
        try {
            return files.examine(look).config();
        } catch (ConfigException e) {
            throw LookTrial.mistaken(look, e.mistakes());
        }
    }

    private Map<String, Object> film(
            Config config, String name, BenchBody body, LookFilm.Cut cut, DrawPatience patience) throws BenchRefusal {
        LightSpec light = config.light();
        if (!body.flag("states", false)) {
            light = light.showing(light.look(name).orElseThrow(() -> BenchRefusal.noLook(name)));
        }
        try (FilmPrinter printer = printer(config, body)) {
            return LookFilm.of(config, light, printer, cut, patience);
        }
    }

    private Map<String, Object> layer(BenchLook look, BenchBody body, LookFilm.Cut cut, DrawPatience patience)
            throws BenchRefusal {
        int layer = body.whole("layer", 0, BenchLook.MOST_LAYERS - 1, 0);
        if (layer >= look.layers().size()) {
            throw BenchRefusal.badRequest("look.layers has no layer " + layer);
        }
        BenchLook alone = look.alone(layer);
        Config config = read(alone);
        int pixels = body.whole("pixels", 0, 1000, 0);
        try (FilmPrinter printer = printer(config, body)) {
            return LookFilm.ofLayer(config, config.looks().get(alone.name()), printer, cut, pixels, patience);
        }
    }

    private FilmPrinter printer(Config config, BenchBody body) throws BenchRefusal {
        var recording = body.within("recording");
        if (recording.isPresent()) {
            return RecordedPrinter.of(recordings, config, recording.get());
        }
        var played = body.within("printer");
        return played.isPresent() ? PlayedPrinter.of(config, played.get()) : PlayedPrinter.live(daemon);
    }
}
