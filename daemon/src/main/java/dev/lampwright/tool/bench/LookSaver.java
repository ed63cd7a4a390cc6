package dev.lampwright.tool.bench;

import dev.lampwright.config.Config;
import dev.lampwright.file.AtomicFile;
import dev.lampwright.file.LineChanges;
import dev.lampwright.tool.bench.KeptVersions.Version;
import dev.lampwright.tool.bench.LookShelves.Found;
import dev.lampwright.tool.bench.LookShelves.From;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Writes looks and cues. Only their text changes, all files are checked first, and the old text is kept. Nobody's edits are lost: a change
 * is planned and checked for the files as they are, and planned again if they have changed before it is written. Safe for many threads; a
 * process makes one change at a time.
 */
final class LookSaver {
    /** With its escapes, a text this long still fits into the file of versions. */
    private static final int MOST_BYTES = 400_000;

    private static final int TIMES = 3;

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
     * @param seen looks as they were when a page asked for them
     */
    LookSaver(BenchFiles files, Supplier<Config> running, BenchWorker worker, SeenLooks seen) {
        this.files = files;
        this.running = running;
        this.worker = worker;
        this.seen = seen;
        versions = new KeptVersions(files.versions());
    }

    /** Plans a change, or says why it must not be made. */
    private interface Planner {
        EditPlan plan(LookPlans plans) throws BenchRefusal;
    }

    /** Where a new look would be written: {@code writes}, {@code file}, {@code overlay} and, if nowhere, {@code why_not}. */
    Map<String, Object> place() {
        Map<String, Object> place = new LinkedHashMap<>();
        boolean file = files.whyNotWritten(files.file()).isEmpty();
        Optional<BenchRefusal> why = files.whyNotWritten(files.overlay());
        place.put("writes", file ? From.FILE.word() : why.isEmpty() ? From.OVERLAY.word() : "nowhere");
        place.put("file", files.file().toString());
        place.put("overlay", files.overlay().toString());
        if (!file && why.isPresent()) {
            place.put("why_not", why.get().getMessage());
            place.put("why_not_code", why.get().code());
            place.put("why_not_values", why.get().values());
        }
        return place;
    }

    /** The changes that can be undone, the newest first. Does not wait for a save. */
    List<Map<String, Object>> versions() {
        return versions.all().stream().map(Version::told).toList();
    }

    /** The files as they are now. */
    LookPlans plans() throws BenchRefusal {
        BenchTexts texts = files.texts();
        return new LookPlans(
                files, texts, LookShelves.of(files, texts, running.get().fitting()));
    }

    /**
     * Saves a look.
     *
     * @param look the look
     * @param base version of the look that it was made from; empty for a new one
     * @param sure whether it may be one that shows a fault
     * @return what was written
     */
    Map<String, Object> save(BenchLook look, String base, boolean sure) throws BenchRefusal {
        return write(plans -> {
            requireName(plans.shelves(), look.name());
            requireBase(plans.shelves(), look.name(), base, Optional.of(look));
            requireSure(look.name(), sure);
            return plans.save(look);
        });
    }

    /** A look that exists may have any name. */
    private static void requireName(LookShelves shelves, String name) throws BenchRefusal {
        if (shelves.find(name).isEmpty()) {
            BenchLook.requireName(name);
        }
    }

    /** What saving a look would do, without writing it or comparing what it was made from. */
    EditPlan planned(BenchLook look) throws BenchRefusal {
        LookPlans plans = plans();
        requireName(plans.shelves(), look.name());
        return plans.save(look);
    }

    /**
     * Takes a look out of the file that it is in.
     *
     * @param name of the look
     * @param base its version
     * @param sure whether it may be one that shows a fault
     * @return what was written
     */
    Map<String, Object> remove(String name, String base, boolean sure) throws BenchRefusal {
        return write(plans -> {
            Found found = plans.own(name);
            requireBase(plans.shelves(), name, base, Optional.empty());
            requireSure(name, sure);
            return plans.remove(found);
        });
    }

    /**
     * Renames a look, in the cues of its file too.
     *
     * @param name of the look
     * @param to what to call it
     * @param base its version
     * @param sure whether it may be one that shows a fault
     * @return what was written
     */
    Map<String, Object> rename(String name, String to, String base, boolean sure) throws BenchRefusal {
        BenchLook.requireName(to);
        return write(plans -> {
            Found found = plans.own(name);
            requireBase(plans.shelves(), name, base, Optional.empty());
            if (plans.shelves().find(to).isPresent()) {
                throw taken(to);
            }
            requireSure(name, sure);
            return plans.rename(found, to);
        });
    }

    /**
     * Puts back what there was before a change.
     *
     * @param id of the version
     * @param base version of that look, or of the cues, as they are now
     * @param sure whether it may change what a fault looks like
     * @return what was written
     */
    Map<String, Object> restore(String id, String base, boolean sure) throws BenchRefusal {
        return write(plans -> {
            Version version = versions.find(id)
                    .orElseThrow(() -> new BenchRefusal(404, "no_version", "that version is not kept any more"));
            requireBaseOf(plans, version, base);
            EditPlan plan = plans.restore(version);
            if (version.look().isEmpty()) {
                requireSureOfCues(plan, sure);
            } else {
                requireSure(version.look(), sure);
            }
            return plan;
        });
    }

    private void requireBaseOf(LookPlans plans, Version version, String base) throws BenchRefusal {
        if (version.look().isEmpty()) {
            requireCues(plans, base, List.of());
            return;
        }
        String now = plans.shelves().find(version.look()).map(Found::version).orElse("");
        if (!now.equals(base)) {
            throw changed(plans.shelves(), version.look(), base, Optional.empty());
        }
    }

    /**
     * Replaces the user's own cues.
     *
     * @param cues the keys of each, in their order
     * @param base version of the cues that they were made from
     * @param sure whether they may change which look a fault puts on
     * @return what was written
     */
    Map<String, Object> saveCues(List<Map<String, Object>> cues, String base, boolean sure) throws BenchRefusal {
        return write(plans -> {
            requireCues(plans, base, cues);
            EditPlan plan = plans.cues(cues);
            requireSureOfCues(plan, sure);
            return plan;
        });
    }

    /** Changes whenever the cues do. */
    static String cuesVersion(LookPlans plans) {
        return BenchLook.version(plans.cuesIn() + "\n" + plans.shelves().cues().map(LookShelves.Cues::cues));
    }

    private static void requireCues(LookPlans plans, String base, List<Map<String, Object>> yours) throws BenchRefusal {
        String now = cuesVersion(plans);
        if (!now.equals(base)) {
            Map<String, Object> more = new LinkedHashMap<>();
            List<Map<String, Object>> theirs =
                    plans.shelves().cues().map(LookShelves.Cues::cues).orElse(List.of());
            more.put("theirs", Map.of("cues", theirs, "version", now));
            more.put("yours", Map.of("cues", yours));
            throw new BenchRefusal(412, "changed_cues", "someone else has changed the cues since you opened them")
                    .and(more);
        }
    }

    private void requireBase(LookShelves shelves, String name, String base, Optional<BenchLook> yours)
            throws BenchRefusal {
        String now = shelves.find(name).map(Found::version).orElse("");
        if (!now.equals(base)) {
            throw base.isEmpty() ? taken(name) : changed(shelves, name, base, yours);
        }
    }

    private static BenchRefusal taken(String name) {
        return new BenchRefusal(409, "taken", "there is a look " + name + " already; choose another name")
                .with("look", name);
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
        return new BenchRefusal(412, "changed", "someone else has changed the look " + name + " since you opened it")
                .with("look", name)
                .and(more);
    }

    private static Map<String, Object> told(Found found) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("look", found.look().table());
        told.put("toml", found.toml());
        return told;
    }

    private void requireSure(String name, boolean sure) throws BenchRefusal {
        if (!sure && LookList.isOfFault(running.get(), name)) {
            throw faultLook(name);
        }
    }

    private void requireSureOfCues(EditPlan plan, boolean sure) throws BenchRefusal {
        if (!sure && FaultCues.change(files, plan)) {
            throw faultLook(FaultCues.look(running.get()));
        }
    }

    private static BenchRefusal faultLook(String name) {
        return new BenchRefusal(
                        409,
                        "fault_look",
                        "this changes how a fault looks (" + name + "); confirm it only if the fault still stands out")
                .with("look", name);
    }

    private void requireWritable(From in) throws BenchRefusal {
        Optional<BenchRefusal> why = files.whyNotWritten(files.path(in));
        if (why.isPresent()) {
            throw why.get();
        }
    }

    /** Plans a change of the files as they are now, checks it, and writes it. Starts over, a few times, if they have changed since. */
    private Map<String, Object> write(Planner planner) throws BenchRefusal {
        return worker.saves().take(() -> {
            for (int time = 1; ; time++) {
                EditPlan plan = planner.plan(plans());
                requireWritable(plan.in());
                requireShort(plan.before().in(plan.in()));
                requireShort(plan.next());
                requireRight(plan);
                if (replace(plan)) {
                    return told(plan);
                }
                if (time == TIMES) {
                    throw changedFile(files.path(plan.in()));
                }
            }
        });
    }

    private static BenchRefusal changedFile(Path file) {
        return new BenchRefusal(412, "changed_file", file + ": has changed while it was being saved; try again")
                .with("file", file.toString());
    }

    private static void requireShort(String text) throws BenchRefusal {
        if (text.getBytes(StandardCharsets.UTF_8).length > MOST_BYTES) {
            throw new BenchRefusal(413, "file_too_long", "the file would be longer than " + MOST_BYTES + " bytes")
                    .with("bytes", MOST_BYTES);
        }
    }

    private void requireRight(EditPlan plan) throws BenchRefusal {
        EditPlan.Verdict verdict = worker.run("", patience -> plan.verdict(files, worker.memory(), patience));
        if (!verdict.mistakes().isEmpty()) {
            throw plan.refused(verdict.mistakes());
        }
    }

    private Map<String, Object> told(EditPlan plan) throws BenchRefusal {
        BenchTexts texts = plan.after();
        LookPlans after = new LookPlans(
                files, texts, LookShelves.of(files, texts, running.get().fitting()));
        Map<String, Object> done = new LinkedHashMap<>();
        done.put("done", true);
        done.put("look", plan.look());
        Optional<Found> found =
                plan.look().isEmpty() ? Optional.empty() : after.shelves().find(plan.look());
        done.put(
                "version",
                plan.look().isEmpty()
                        ? cuesVersion(after)
                        : found.map(Found::version).orElse(""));
        found.ifPresent(one -> done.put("from", one.from().word()));
        String file = files.path(plan.in()).toString();
        done.put("written", plan.in().word());
        done.put("file", file);
        done.put("changes", LineChanges.of(file, plan.before().in(plan.in()), plan.next()));
        return done;
    }

    /**
     * Keeps the old text before it writes the new one, so that a process that is killed in between loses nothing.
     *
     * @return false if the files have changed since the plan was made; then nothing is written
     */
    private boolean replace(EditPlan plan) throws BenchRefusal {
        Path file = files.path(plan.in());
        try {
            AtomicFile.makeFolder(file.toAbsolutePath().getParent());
            List<Version> before = versions.all();
            versions.keep(plan);
            boolean written = false;
            try {
                written = AtomicFile.replaceNoLink(file, plan.next(), () -> isAsBefore(plan));
            } finally {
                if (!written) {
                    versions.write(before);
                }
            }
            return written;
        } catch (IOException e) {
            throw BenchRefusal.notWritten(file, e);
        }
    }

    private boolean isAsBefore(EditPlan plan) throws IOException {
        try {
            return files.texts().equals(plan.before());
        } catch (BenchRefusal e) {
            throw new IOException(e.getMessage(), e);
        }
    }
}
