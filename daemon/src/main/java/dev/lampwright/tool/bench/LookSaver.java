package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.config.Examined;
import dev.lampwright.config.Mistake;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.file.LineChanges;
import dev.lampwright.toml.TomlEditor;
import dev.lampwright.tool.bench.KeptVersions.Version;
import dev.lampwright.tool.bench.LookShelves.Found;
import dev.lampwright.tool.bench.LookShelves.From;
import dev.lampwright.tool.check.LookMistakes;
import dev.lampwright.tool.check.Progress;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Writes looks and cues: only their text changes, the whole is checked before, what was there is kept, and what somebody else has written in
 * the meantime is not lost. Safe for many threads, one change at a time.
 */
final class LookSaver {
    private static final int MOST_CHARS = 400_000;
    private static final String FAULT_LOOK =
            "this look shows a fault; save it only if the fault still stands out, and say that you are sure";
    private static final String BEGINNING =
            "# Looks and cues that were saved on the live page. They are read after the configuration file.\n";

    private final BenchFiles files;
    private final KeptVersions versions;
    private final Supplier<Config> running;
    private final BenchWorker worker;
    private final SeenLooks seen;

    /**
     * Makes one.
     *
     * @param files where looks are
     * @param running what the daemon runs
     * @param worker draws what is to be checked
     * @param seen what looks were when somebody asked for them
     */
    LookSaver(BenchFiles files, Supplier<Config> running, BenchWorker worker, SeenLooks seen) {
        this.files = files;
        this.running = running;
        this.worker = worker;
        this.seen = seen;
        versions = new KeptVersions(files.versions());
    }

    /** Edits a text. */
    private interface Edit {
        void in(TomlEditor text) throws BenchRefusal;
    }

    /**
     * A change that is about to be made.
     *
     * @param in which file
     * @param look of which look; empty for cues
     * @param did what it is
     */
    private record Change(From in, String look, String did) {}

    /** Where a new look would be written: {@code writes}, {@code file}, {@code overlay} and, if nowhere, {@code why_not}. */
    Map<String, Object> place() {
        Map<String, Object> place = new LinkedHashMap<>();
        boolean file = files.whyNotWritten(files.file()).isEmpty();
        Optional<String> why = files.whyNotWritten(files.overlay());
        place.put("writes", file ? From.FILE.word() : why.isEmpty() ? From.OVERLAY.word() : "nowhere");
        place.put("file", files.file().toString());
        place.put("overlay", files.overlay().toString());
        if (!file) {
            why.ifPresent(reason -> place.put("why_not", reason));
        }
        return place;
    }

    /** What was done, the newest first. */
    synchronized List<Map<String, Object>> versions() {
        return versions.all().stream().map(Version::told).toList();
    }

    /**
     * Saves a look.
     *
     * @param look the look
     * @param base version of the look that it was made from; empty for a new one
     * @param sure whether it may be one that shows a fault
     * @return what was written
     */
    synchronized Map<String, Object> save(BenchLook look, String base, boolean sure) throws BenchRefusal {
        BenchLook.requireName(look.name());
        LookShelves shelves = shelves();
        requireBase(shelves, look.name(), base, Optional.of(look));
        requireSure(look.name(), sure);
        return saved(shelves, look, "saved");
    }

    private Map<String, Object> saved(LookShelves shelves, BenchLook look, String did) throws BenchRefusal {
        From in = target(shelves.find(From.OVERLAY, look.name()).isPresent());
        return write(new Change(in, look.name(), did), text -> text.set(look.path(), look.table()));
    }

    /**
     * Takes a look out of the file that it is in.
     *
     * @param name of the look
     * @param base its version
     * @return what was written
     */
    synchronized Map<String, Object> remove(String name, String base) throws BenchRefusal {
        LookShelves shelves = shelves();
        Found found = own(shelves, name);
        requireBase(shelves, name, base, Optional.empty());
        return removed(found, "removed");
    }

    private Map<String, Object> removed(Found found, String did) throws BenchRefusal {
        requireWritable(found.from());
        Change change = new Change(found.from(), found.look().name(), did);
        return write(change, text -> text.remove(found.look().path()));
    }

    /**
     * Gives a look another name, to cues in its file as well.
     *
     * @param name of the look
     * @param to what to call it
     * @param base its version
     * @return what was written
     */
    synchronized Map<String, Object> rename(String name, String to, String base) throws BenchRefusal {
        BenchLook.requireName(to);
        LookShelves shelves = shelves();
        Found found = own(shelves, name);
        requireBase(shelves, name, base, Optional.empty());
        if (shelves.find(to).isPresent()) {
            throw taken(to);
        }
        requireWritable(found.from());
        return write(new Change(found.from(), to, "renamed"), text -> {
            rename(text, found.look(), to);
            CueText.rename(text, name, to);
        });
    }

    private static void rename(TomlEditor text, BenchLook look, String to) {
        if (text.section(look.path()).isPresent()) {
            text.rename(look.path(), to);
        } else {
            text.set(List.of(BenchLook.LOOKS, to), look.table());
            text.remove(look.path());
        }
    }

    /**
     * Puts back what there was before a change.
     *
     * @param id of the version
     * @param base version of that look, or of the cues, as they are now
     * @return what was written
     */
    synchronized Map<String, Object> restore(String id, String base) throws BenchRefusal {
        Version version = versions.find(id)
                .orElseThrow(() -> new BenchRefusal(404, "nothing", "that version is not kept any more"));
        requireBaseOf(version, base);
        requireWritable(version.in());
        Change change = new Change(version.in(), version.look(), "restored");
        if (BenchLook.version(text(version.in())).equals(version.after())) {
            return write(change, version.text());
        }
        return write(change, text -> putBack(text, version));
    }

    private void requireBaseOf(Version version, String base) throws BenchRefusal {
        if (version.look().isEmpty()) {
            requireCues(base, List.of());
        } else {
            LookShelves shelves = shelves();
            String now = shelves.find(version.look()).map(Found::version).orElse("");
            if (!now.equals(base)) {
                throw changed(shelves, version.look(), base, Optional.empty());
            }
        }
    }

    private static void putBack(TomlEditor text, Version version) {
        Optional<Object> before = version.before();
        if (before.isPresent()) {
            text.set(version.path(), before.get());
        } else {
            text.remove(version.path());
        }
    }

    /** What tells cues from what they are after a change. */
    String cuesVersion() throws BenchRefusal {
        return BenchLook.version(cuesIn() + "\n" + CueText.of(editor(text(cuesIn()))));
    }

    /** The file that the cues in force are in, or that new ones would go to. */
    From cuesIn() throws BenchRefusal {
        return CueText.of(editor(text(From.OVERLAY))).isPresent()
                ? From.OVERLAY
                : CueText.of(editor(text(From.FILE))).isPresent() ? From.FILE : target(false);
    }

    /** The cues of the user's own. */
    List<Map<String, Object>> cues() throws BenchRefusal {
        return CueText.of(editor(text(cuesIn()))).orElse(List.of());
    }

    /**
     * Saves cues in place of the user's own.
     *
     * @param cues the keys of each, in their order
     * @param base version of the cues that they were made from
     * @return what was written
     */
    synchronized Map<String, Object> saveCues(List<Map<String, Object>> cues, String base) throws BenchRefusal {
        requireCues(base, cues);
        From in = target(cuesIn() == From.OVERLAY);
        return write(new Change(in, "", "cues"), text -> CueText.set(text, cues, in == From.OVERLAY));
    }

    private void requireCues(String base, List<Map<String, Object>> yours) throws BenchRefusal {
        String now = cuesVersion();
        if (!now.equals(base)) {
            Map<String, Object> more = new LinkedHashMap<>();
            more.put("theirs", Map.of("cues", cues(), "version", now));
            more.put("yours", Map.of("cues", yours));
            throw new BenchRefusal(412, "changed", "somebody else has changed the cues meanwhile", more);
        }
    }

    private LookShelves shelves() throws BenchRefusal {
        return LookShelves.read(files, running.get().fitting());
    }

    private static Found own(LookShelves shelves, String name) throws BenchRefusal {
        return shelves.find(name)
                .filter(found -> found.from() == From.OVERLAY || found.from() == From.FILE)
                .orElseThrow(() -> BenchRefusal.noLook(name + " of your own"));
    }

    private void requireBase(LookShelves shelves, String name, String base, Optional<BenchLook> yours)
            throws BenchRefusal {
        String now = shelves.find(name).map(Found::version).orElse("");
        if (now.equals(base)) {
            return;
        }
        throw base.isEmpty() ? taken(name) : changed(shelves, name, base, yours);
    }

    private static BenchRefusal taken(String name) {
        return new BenchRefusal(409, "taken", "there is a look " + name + " already; choose another name");
    }

    private BenchRefusal changed(LookShelves shelves, String name, String base, Optional<BenchLook> yours) {
        Map<String, Object> more = new LinkedHashMap<>();
        more.put("base", seen.find(base).map(LookSaver::told).orElse(null));
        more.put(
                "theirs",
                shelves.find(name)
                        .map(found -> {
                            Map<String, Object> told = told(found);
                            told.put("version", found.version());
                            return told;
                        })
                        .orElse(null));
        yours.ifPresent(look -> more.put("yours", Map.of("look", look.table(), "toml", look.toml())));
        return new BenchRefusal(412, "changed", "somebody else has changed the look " + name + " meanwhile", more);
    }

    private static Map<String, Object> told(Found found) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("look", found.look().table());
        told.put("toml", found.toml());
        return told;
    }

    private void requireSure(String name, boolean sure) throws BenchRefusal {
        if (!sure && LookList.isOfFault(running.get(), name)) {
            throw new BenchRefusal(409, "fault_look", FAULT_LOOK);
        }
    }

    private From target(boolean inOverlay) throws BenchRefusal {
        From in = inOverlay || files.whyNotWritten(files.file()).isPresent() ? From.OVERLAY : From.FILE;
        requireWritable(in);
        return in;
    }

    private void requireWritable(From in) throws BenchRefusal {
        Optional<String> why = files.whyNotWritten(path(in));
        if (why.isPresent()) {
            throw new BenchRefusal(507, "not_written", why.get());
        }
    }

    private Path path(From in) {
        return in == From.FILE ? files.file() : files.overlay();
    }

    private String text(From in) throws BenchRefusal {
        return in == From.FILE ? files.text() : files.kept().orElse("");
    }

    private static TomlEditor editor(String text) throws BenchRefusal {
        try {
            return TomlEditor.of(text);
        } catch (IllegalArgumentException e) {
            throw new BenchRefusal(500, "not_read", "the file is not valid TOML: " + e.getMessage() + "; fix it first");
        }
    }

    private Map<String, Object> write(Change change, Edit edit) throws BenchRefusal {
        String now = text(change.in());
        TomlEditor editor = editor(now.isEmpty() && change.in() == From.OVERLAY ? BEGINNING : now);
        try {
            edit.in(editor);
        } catch (IllegalArgumentException | IllegalStateException e) {
            throw new BenchRefusal(
                    422, "not_edited", "the text of the file cannot be changed there: " + e.getMessage());
        }
        return write(change, editor.text());
    }

    private Map<String, Object> write(Change change, String next) throws BenchRefusal {
        String before = text(change.in());
        if (next.length() > MOST_CHARS) {
            throw new BenchRefusal(413, "too_long", "the file would be longer than " + MOST_CHARS + " characters");
        }
        requireRight(change, next);
        if (!text(change.in()).equals(before)) {
            throw new BenchRefusal(412, "changed", path(change.in()) + " was changed by somebody else meanwhile");
        }
        replace(change, before, next);
        Map<String, Object> done = new LinkedHashMap<>();
        done.put("done", true);
        Optional<Found> found =
                change.look().isEmpty() ? Optional.empty() : shelves().find(change.look());
        done.put(
                "version",
                change.look().isEmpty()
                        ? cuesVersion()
                        : found.map(Found::version).orElse(""));
        found.ifPresent(one -> done.put("from", one.from().word()));
        done.put("written", change.in().word());
        done.put("file", path(change.in()).toString());
        done.put("changes", LineChanges.of(path(change.in()).toString(), before, next));
        return done;
    }

    /** In the order in which nothing is lost: what was there is kept before anything is written over it. */
    private void replace(Change change, String before, String next) throws BenchRefusal {
        Version version = new Version(
                versions.nextId(),
                System.currentTimeMillis(),
                change.look(),
                change.did(),
                change.in(),
                before,
                BenchLook.version(next));
        try {
            AtomicFile.makeFolder(path(change.in()).toAbsolutePath().getParent());
            versions.keep(version);
            writeOrForget(change, version, next);
        } catch (IOException e) {
            throw new BenchRefusal(507, "not_written", e.getMessage());
        }
    }

    private void writeOrForget(Change change, Version version, String next) throws IOException {
        try {
            AtomicFile.replaceNoLink(path(change.in()), next);
        } catch (IOException e) {
            versions.forget(version);
            throw e;
        }
    }

    /** Checks all files as {@code check} does, as they would be. */
    private void requireRight(Change change, String next) throws BenchRefusal {
        String text = change.in() == From.FILE ? next : files.text();
        Optional<String> kept = change.in() == From.OVERLAY ? Optional.of(next) : files.kept();
        List<Mistake> mistakes = worker.run("", patience -> mistakes(text, kept));
        if (!mistakes.isEmpty()) {
            boolean cues = change.look().isEmpty();
            List<String> path = cues ? List.of(CueText.CUES) : List.of(BenchLook.LOOKS, change.look());
            boolean goes = change.did().equals("removed");
            throw new BenchRefusal(
                    goes ? 409 : 422,
                    goes ? "in_use" : "mistakes",
                    mistakes.get(0).sentence(),
                    Map.of(
                            "mistakes",
                            LookJudge.told(mistakes, path, cues ? "" : BenchLook.LAYERS, cues ? "cue" : "layer")));
        }
    }

    private List<Mistake> mistakes(String text, Optional<String> kept) {
        try {
            Examined examined = files.examine(text, kept);
            return LookMistakes.of(examined, Progress.UNSEEN);
        } catch (ConfigException e) {
            return e.mistakes();
        }
    }
}
