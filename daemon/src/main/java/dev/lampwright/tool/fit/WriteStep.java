package dev.lampwright.tool.fit;

import dev.lampwright.file.AtomicFile;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Writes the configuration, and has it looked at. */
final class WriteStep implements Step {
    private final Path file;
    private final GuidedFitting.Review review;

    WriteStep(Path file, GuidedFitting.Review review) {
        this.file = file;
        this.review = review;
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
        String text = ConfigText.of(before, file);
        bench.say("This is what was found:");
        bench.say("");
        text.lines().forEach(line -> bench.say("    " + line));
        bench.say("");
        Path written = write(text, bench);
        bench.say(written + " is written.");
        bench.speak();
        review.of(written).forEach(bench::say);
        HandOver.lines(before, written).forEach(bench::say);
        bench.say("Start with: lampwright run --config " + written);
        bench.speak();
        return before;
    }

    private Path write(String text, FittingBench bench) throws LeaveException, IOException {
        Path target = file;
        bench.askAside(Question.enter(
                "Press Enter to write it to " + target + ", or go back with b:",
                "Nothing is written before that, and no file that is there is replaced without asking."));
        while (true) {
            try {
                AtomicFile.create(target, text);
                return target;
            } catch (FileAlreadyExistsException e) {
                Optional<Path> other = bench.askAside(instead(target));
                if (other.isEmpty()) {
                    keep(target);
                    AtomicFile.replace(target, text);
                    return target;
                }
                target = other.get();
            }
        }
    }

    private static Question<Optional<Path>> instead(Path there) {
        return new Question<>(
                there + " is there already. Type overwrite to replace it, or another name to write to:",
                List.of(),
                "If it is replaced, what it is now stays beside it as "
                        + old(there).getFileName() + ".",
                line -> line.equals("overwrite") ? Optional.empty() : Optional.of(readPath(line, there)));
    }

    private static Path readPath(String line, Path there) throws Question.UnusableException {
        if (line.isEmpty()) {
            throw new Question.UnusableException("type overwrite, or another name");
        }
        try {
            return there.resolveSibling(line);
        } catch (InvalidPathException e) {
            throw new Question.UnusableException("that is not the name of a file");
        }
    }

    private static Path old(Path there) {
        return there.resolveSibling(there.getFileName() + ".old");
    }

    private static void keep(Path there) throws IOException {
        AtomicFile.replace(old(there), Files.readString(there));
    }
}
