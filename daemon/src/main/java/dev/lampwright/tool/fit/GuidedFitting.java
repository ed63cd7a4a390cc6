package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The guided fitting, from the first step to the written file. */
public final class GuidedFitting {
    /** The cautions before anything is lit. */
    private static final List<String> CAUTIONS = List.of(
            "Guided fitting: each step lights something and asks what you see.",
            "",
            "Before you begin:",
            "  - Switch off and unplug before wiring, and before you touch any wire.",
            "  - The mains side of a supply is for people licensed to do it; local codes come first.",
            "  - Fuse the low-voltage side, close to the supply.",
            "  - The light is an aid, not a safety device.",
            "  - Flashing light can harm people with photosensitive epilepsy. Nothing here flashes more than three times a"
                    + " second.",
            "  - Do not look into bright LEDs; look at what they light, or from the side.",
            "");

    private final Path file;
    private final Path kept;
    private final Terminal terminal;
    private final Boards boards;
    private final PrinterFinder printers;
    private final FileKnowledge knowledge;
    private final NewPage page;

    /** How a fitting ended. */
    public enum End {
        /** The file is written. */
        DONE,
        /** The user stopped; answers are kept. */
        STOPPED,
        /** There were no more answers; those given are kept. */
        INPUT_ENDED
    }

    /**
     * Prepares a fitting; nothing is asked yet.
     *
     * @param file the configuration to write; {@code FILE.fit} next to it keeps the answers until it is written
     * @param terminal where questions go and answers come from
     * @param boards finds controllers
     * @param printers finds out where a printer reports what
     * @param knowledge what the rest of Lampwright knows about the finished file
     */
    public GuidedFitting(Path file, Terminal terminal, Boards boards, PrinterFinder printers, FileKnowledge knowledge) {
        this(file, terminal, boards, printers, knowledge, NewPage.USUAL);
    }

    /** The same with what is known of the live page. */
    GuidedFitting(
            Path file,
            Terminal terminal,
            Boards boards,
            PrinterFinder printers,
            FileKnowledge knowledge,
            NewPage page) {
        this.file = file;
        kept = kept(file);
        this.terminal = terminal;
        this.boards = boards;
        this.printers = printers;
        this.knowledge = knowledge;
        this.page = page;
    }

    /**
     * Whether a fitting of a file was started and is not finished.
     *
     * @param file the configuration
     * @return whether there are answers from which it continues
     */
    public static boolean isUnderWay(Path file) {
        return Files.exists(kept(file));
    }

    private static Path kept(Path file) {
        return file.resolveSibling(file.getFileName() + ".fit");
    }

    /**
     * Asks until the file is written or the user stops. Everything is dark afterwards.
     *
     * @return how it ended
     * @throws IOException if a file cannot be read or written; the message says which and what to do
     */
    public End run() throws IOException {
        cautions(
                        "Until the supply is known, at most " + FittingSetups.SAFE_CEILING + " mA is asked for.",
                        FittingBench.KEYS)
                .forEach(line -> terminal.say(Phrase.of("caution", line)));
        try {
            AnswerJournal journal = journal();
            FittingBench bench = new FittingBench(terminal, journal, boards);
            try {
                steps(bench, journal);
            } finally {
                bench.putOut();
            }
            journal.delete();
            return End.DONE;
        } catch (LeaveException e) {
            terminal.say(Phrase.of(Files.exists(kept) ? "stopped" : "stopped_unlit", stopped()));
            return e.way() == LeaveException.Way.INPUT_ENDED ? End.INPUT_ENDED : End.STOPPED;
        }
    }

    /** What is said first, ending with the given lines. */
    static List<String> cautions(String... last) {
        return Stream.concat(CAUTIONS.stream(), Stream.of(last)).toList();
    }

    private String stopped() {
        return Files.exists(kept)
                ? "Stopped; the lights are dark. Your answers are in " + kept + ": run the same command to resume."
                : "Stopped; nothing was lit, and nothing is kept.";
    }

    private AnswerJournal journal() throws IOException, LeaveException {
        if (!Files.exists(kept)) {
            return AnswerJournal.empty(kept);
        }
        AnswerJournal journal = AnswerJournal.read(kept);
        FittingBench bench = new FittingBench(terminal, AnswerJournal.empty(kept), boards);
        boolean again = bench.askAside(Question.choice(
                        "There are earlier answers in " + kept + ".",
                        "The fitting was stopped before its end. You can resume it, or start again.",
                        List.of(
                                new Question.Option<>("", "resume", false).named("resume"),
                                new Question.Option<>("n", "start again, and forget them", true).named("start_again")))
                .coded("resume"));
        return again ? AnswerJournal.empty(kept) : journal;
    }

    private List<Step> allSteps() {
        return List.of(
                new BoardStep(),
                new SupplyStep(),
                new OrderStep(),
                new CountStep(),
                new ZonesStep(),
                new DirectionStep(),
                new MountStep(),
                new BrightnessStep(),
                new CurrentStep(),
                new DimmersStep(),
                new PrinterStep(printers),
                new PageStep(page),
                new WriteStep(file, knowledge, page));
    }

    private void steps(FittingBench bench, AnswerJournal journal) throws LeaveException, IOException {
        List<Step> steps = allSteps();
        List<Findings> found = new ArrayList<>(List.of(Findings.NONE));
        int at = 0;
        while (at < steps.size()) {
            Step step = steps.get(at);
            bench.enter(step.name());
            terminal.enter(at + 1, steps.size(), step.name());
            bench.say("");
            bench.say(Phrase.of("step", "Step " + (at + 1) + " of " + steps.size() + ": " + step.title()));
            try {
                found.add(step.run(found.get(at), bench));
                bench.leave();
                journal.forgetRest();
                at++;
            } catch (LeaveException e) {
                if (e.way() != LeaveException.Way.BACK) {
                    throw e;
                }
                at = before(steps, at, journal);
                found.subList(at + 1, found.size()).clear();
            }
        }
    }

    /** The step to go back to: the last one with an answer, which is dropped. */
    private int before(List<Step> steps, int at, AnswerJournal journal) throws IOException {
        for (int step = at; step >= 0; step--) {
            if (journal.forgetLast(steps.get(step).name())) {
                return step;
            }
        }
        terminal.say(Phrase.of("beginning", "This is the beginning."));
        return 0;
    }
}
