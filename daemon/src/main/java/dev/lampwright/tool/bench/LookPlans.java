package dev.lampwright.tool.bench;

import dev.lampwright.toml.TomlEditor;
import dev.lampwright.tool.bench.KeptVersions.Version;
import dev.lampwright.tool.bench.LookShelves.Found;
import dev.lampwright.tool.bench.LookShelves.From;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Plans changes of one state of the files: which of them changes, and what will be in it. Writes nothing. */
final class LookPlans {
    private static final String BEGINNING =
            "# Looks and cues that were saved on the live page. They are read after the configuration file.\n";

    private static final String RESTORED = "restored";

    private final BenchFiles files;
    private final BenchTexts texts;
    private final LookShelves shelves;

    /** Edits a text. */
    private interface Edit {
        void in(TomlEditor text) throws BenchRefusal;
    }

    /**
     * Starts with the files as they are.
     *
     * @param files where they are
     * @param texts what is in them
     * @param shelves the looks in that
     */
    LookPlans(BenchFiles files, BenchTexts texts, LookShelves shelves) {
        this.files = files;
        this.texts = texts;
        this.shelves = shelves;
    }

    LookShelves shelves() {
        return shelves;
    }

    /** The look of a name in a file that can be written. */
    Found own(String name) throws BenchRefusal {
        return shelves.find(name)
                .filter(found -> found.from() == From.OVERLAY || found.from() == From.FILE)
                .orElseThrow(() -> new BenchRefusal(404, "no_own_look", "there is no look " + name + " of your own")
                        .with("look", name));
    }

    /** Puts a look where it is, or where new ones go. */
    EditPlan save(BenchLook look) throws BenchRefusal {
        From in = target(shelves.find(From.OVERLAY, look.name()).isPresent());
        return plan(in, look.name(), "saved", text -> text.set(look.path(), look.table()));
    }

    /** Takes a look out of its file. */
    EditPlan remove(Found found) throws BenchRefusal {
        return plan(
                found.from(),
                found.look().name(),
                "removed",
                text -> text.remove(found.look().path()));
    }

    /** Renames a look, in the cues of its file too. */
    EditPlan rename(Found found, String to) throws BenchRefusal {
        return renamed(found.from(), found.look().name(), to, "renamed");
    }

    private EditPlan renamed(From in, String name, String to, String did) throws BenchRefusal {
        return plan(in, to, name, did, text -> {
            text.rename(List.of(BenchLook.LOOKS, name), to);
            CueText.rename(text, name, to);
        });
    }

    /** Puts back what there was before a change: the whole file if it is as that change left it. A renamed look gets its old name back. */
    EditPlan restore(Version version) throws BenchRefusal {
        if (BenchLook.version(texts.in(version.in())).equals(version.after())) {
            return new EditPlan(
                    version.in(),
                    /* look= */ version.was(),
                    /* was= */ version.look(),
                    RESTORED,
                    texts,
                    version.text());
        }
        if (!version.was().equals(version.look())) {
            return renamed(version.in(), version.look(), version.was(), RESTORED);
        }
        return plan(version.in(), version.look(), RESTORED, text -> {
            Optional<Object> before = version.before();
            if (before.isPresent()) {
                text.set(version.path(), before.get());
            } else {
                text.remove(version.path());
            }
        });
    }

    /** Replaces the user's own cues. Those in the file that all rigs share stay, but no longer count for this rig. */
    EditPlan cues(List<Map<String, Object>> cues) throws BenchRefusal {
        From in = target(cuesIn() == From.OVERLAY);
        boolean over = in == From.OVERLAY || shelves.cuesBelow(in).isPresent();
        return plan(in, "", "cues", text -> CueText.set(text, cues, over));
    }

    /** The file that the cues in force are in, or that new ones would go to. */
    From cuesIn() {
        return shelves.cues().map(LookShelves.Cues::from).orElseGet(() -> target(false));
    }

    /** The file for what is not in the other one already. */
    private From target(boolean inOverlay) {
        return inOverlay || files.whyNotWritten(files.file()).isPresent() ? From.OVERLAY : From.FILE;
    }

    private EditPlan plan(From in, String look, String did, Edit edit) throws BenchRefusal {
        return plan(in, look, look, did, edit);
    }

    private EditPlan plan(From in, String look, String was, String did, Edit edit) throws BenchRefusal {
        Path file = files.path(in);
        String now = texts.in(in);
        TomlEditor editor = CueText.editor(file, now.isEmpty() && in == From.OVERLAY ? BEGINNING : now);
        try {
            edit.in(editor);
        } catch (IllegalArgumentException | IllegalStateException e) {
            throw new BenchRefusal(422, "not_edited", "the text of the file cannot be changed there: " + e.getMessage())
                    .with("file", file.toString());
        }
        return new EditPlan(in, look, was, did, texts, editor.text());
    }
}
