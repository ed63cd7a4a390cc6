package dev.lampwright.tool.fit;

import dev.lampwright.file.AtomicFile;
import dev.lampwright.file.EditedFile;
import dev.lampwright.phrase.Phrase;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Writes the configuration, and has it reviewed. */
final class WriteStep implements Step {
    private final Path file;
    private final FileKnowledge knowledge;
    private final NewPage page;

    WriteStep(Path file, FileKnowledge knowledge, NewPage page) {
        this.file = file;
        this.knowledge = knowledge;
        this.page = page;
    }

    @Override
    public String name() {
        return "file";
    }

    @Override
    public String title() {
        return "write the file";
    }

    @Override
    public Findings run(Findings before, FittingBench bench) throws LeaveException, IOException {
        bench.darken();
        String text = ConfigText.of(before, file, page);
        bench.say(Phrase.of("found", "This is what was found:"));
        bench.say("");
        text.lines().forEach(line -> bench.say(Phrase.quoted("    " + line)));
        bench.say("");
        Path written = write(text, before.page() && page.forOthers(), bench);
        bench.say(Phrase.of("written", written + " is written.", "file", written));
        bench.speak();
        knowledge.review(written).forEach(bench::say);
        HandOver.lines(before, knowledge.inForce(text).faults(), written).forEach(bench::say);
        bench.say(Phrase.of("start", "Start with: lampwright run --config " + written));
        bench.speak();
        return before;
    }

    private Path write(String text, boolean tokens, FittingBench bench) throws LeaveException, IOException {
        bench.askAside(Question.enter(
                        "Press Enter to write it to " + file + ", or go back with b:",
                        "Nothing is written before that, and no existing file is replaced without asking.")
                .coded("file_write", "file", file));
        Path target = file;
        while (true) {
            try {
                create(target, text, tokens);
                return target;
            } catch (FileAlreadyExistsException e) {
                Optional<Path> other = bench.askAside(bench.mayNameFiles() ? instead(target) : overwrite(target));
                if (other.isEmpty()) {
                    EditedFile there = EditedFile.read(target);
                    if (tokens) {
                        new GivenFiles(file).makeTokens();
                    }
                    Path old = there.replace(text);
                    bench.say(Phrase.of("written_old", "The old version is kept in " + old + ".", "old", old));
                    return target;
                }
                target = other.get();
            }
        }
    }

    /** A daemon that waits for the file finds the tokens that it names. Those of a file that is already there are left alone. */
    private void create(Path target, String text, boolean tokens) throws IOException {
        if (!tokens) {
            AtomicFile.create(target, text);
            return;
        }
        if (Files.exists(target)) {
            throw new FileAlreadyExistsException(target.toString());
        }
        GivenFiles given = new GivenFiles(file);
        try {
            given.makeTokens();
            AtomicFile.create(target, text);
        } catch (IOException e) {
            given.deleteTokens();
            throw e;
        }
    }

    private static Question<Optional<Path>> instead(Path there) {
        return new Question<>(
                there + " already exists. Type overwrite to replace it, or another name to write to:",
                "If you replace it, a copy of the present file stays next to it, as " + there.getFileName()
                        + ".old-1 or with the next free number.",
                line -> line.equals("overwrite") ? Optional.empty() : Optional.of(readPath(line, there)));
    }

    private static Question<Optional<Path>> overwrite(Path there) {
        return Question.choice(
                        there + " already exists. Replace it?",
                        "A copy of the present file stays next to it.",
                        List.of(new Question.Option<>("overwrite", "replace it", Optional.<Path>empty(), "replace")))
                .coded("file_replace", "file", there);
    }

    private static Path readPath(String line, Path there) throws Question.UnusableException {
        if (line.isEmpty()) {
            throw new Question.UnusableException("overwrite_or", "type overwrite, or another name");
        }
        try {
            return there.resolveSibling(line);
        } catch (InvalidPathException e) {
            throw new Question.UnusableException("file_name", "that is not the name of a file");
        }
    }
}
