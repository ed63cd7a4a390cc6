package dev.lampwright.tool.fit;

import dev.lampwright.file.EditedFile;
import dev.lampwright.file.LineChanges;
import dev.lampwright.phrase.Phrase;
import dev.lampwright.toml.Toml;
import dev.lampwright.toml.TomlEditor;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The fitting of an existing file: it shows what the file contains, offers the steps one by one, and after each one shows what would change
 * in the file, asks, and writes only that.
 */
public final class Refitting {
    private static final String KEYS = "At any question: b goes back, ? helps, q stops (what is written stays).";

    private final Path file;
    private final Terminal terminal;
    private final PrinterFinder printers;
    private final FileKnowledge knowledge;
    private final EditedFile edited;
    private final AnswerJournal journal = AnswerJournal.inMemory();
    private final FittingBench bench;
    private Optional<Findings.Board> board = Optional.empty();
    private Optional<Path> old = Optional.empty();

    /** What can be done with a file, with the wording of the offer. */
    private enum Offer {
        ZONES("1", "zones: name one, or move one"),
        DIMMERS("2", "dimmers: add a light"),
        PRINTER("3", "printer: listen to it again"),
        BRIGHTNESS("4", "how bright"),
        PIXELS("5", "how many pixels"),
        ORDER("6", "the order of the colours"),
        CURRENT("7", "measure the current"),
        SUPPLY("8", "what feeds the strip"),
        MOUNTING("9", "how the strip is mounted"),
        NOTHING("", "nothing more");

        private final String key;
        private final String words;

        Offer(String key, String words) {
            this.key = key;
            this.words = words;
        }
    }

    /**
     * Reads the file; nothing is asked yet.
     *
     * @param file the configuration
     * @param terminal where questions go and answers come from
     * @param boards finds controllers
     * @param printers finds out where a printer reports what
     * @param knowledge what the rest of Lampwright knows about the file
     * @throws IOException if it cannot be read, or is not valid; the message has a line for each mistake
     */
    public Refitting(Path file, Terminal terminal, Boards boards, PrinterFinder printers, FileKnowledge knowledge)
            throws IOException {
        this.file = file;
        this.terminal = terminal;
        this.printers = printers;
        this.knowledge = knowledge;
        edited = EditedFile.read(file);
        knowledge.inForce(edited.text());
        bench = new FittingBench(KEYS, terminal, journal, boards);
    }

    /**
     * Offers the steps until the user is done. Everything is dark afterwards.
     *
     * @return how it ended
     * @throws IOException if the file cannot be written; the message says what to do, and the file is unchanged
     */
    public GuidedFitting.End run() throws IOException {
        GuidedFitting.cautions("Until you answer about the supply again, the file's ceiling applies.", KEYS)
                .forEach(line -> terminal.say(Phrase.of("caution", line)));
        try {
            Offer offer = choose();
            while (offer != Offer.NOTHING) {
                perform(offer);
                offer = choose();
            }
            handOver();
            return GuidedFitting.End.DONE;
        } catch (LeaveException e) {
            terminal.say(Phrase.of(
                    old.isEmpty() ? "refit_stopped" : "refit_stopped_written",
                    "Stopped; the lights are dark. "
                            + (old.isEmpty() ? "Nothing has changed." : "What was written stays.")));
            return e.way() == LeaveException.Way.INPUT_ENDED
                    ? GuidedFitting.End.INPUT_ENDED
                    : GuidedFitting.End.STOPPED;
        } finally {
            bench.putOut();
        }
    }

    private FileFindings contents() throws IOException {
        return new FileFindings(TomlEditor.of(edited.text()), knowledge.inForce(edited.text()));
    }

    private Offer choose() throws LeaveException, IOException {
        bench.darken();
        terminal.enter(0, 0, "");
        bench.say("");
        bench.say(Phrase.of("refit_has", file + " has:", "file", file));
        contents().lines().forEach(bench::say);
        bench.say("");
        List<Question.Option<Offer>> options = Arrays.stream(Offer.values())
                .map(offer -> new Question.Option<>(offer.key, offer.words, offer)
                        .named("refit_" + offer.name().toLowerCase(Locale.ROOT)))
                .toList();
        while (true) {
            try {
                return bench.askAside(Question.choice(
                                "What do you want to fit?",
                                "Each of these is a step of its own. Afterwards you see what would change in the file, and"
                                        + " nothing is written before you agree. To make a new file, give another"
                                        + " name.",
                                options)
                        .coded("refit_what"));
            } catch (LeaveException e) {
                if (e.way() != LeaveException.Way.BACK) {
                    throw e;
                }
                terminal.say(Phrase.of("beginning", "This is the beginning."));
            }
        }
    }

    private void perform(Offer offer) throws LeaveException, IOException {
        FileFindings contents = contents();
        Findings before = contents.findings();
        if (offer != Offer.PRINTER && offer != Offer.SUPPLY) {
            if (board.isEmpty() && !connect()) {
                return;
            }
            before = before.withBoard(board.orElseThrow());
            bench.show(FittingSetups.of(before), Scene.DARK);
        }
        Optional<Findings> after = found(offer, contents, before);
        if (after.isPresent()) {
            propose(before, after.get());
        }
        bench.darken();
    }

    private Optional<Findings> found(Offer offer, FileFindings contents, Findings before)
            throws LeaveException, IOException {
        return switch (offer) {
            case ZONES -> zones(before);
            case DIMMERS -> stepped(new DimmersStep(contents.dimmersInUse(), contents.dimmerNames()), before);
            case PRINTER -> printer(contents, before);
            case BRIGHTNESS -> stepped(new BrightnessStep(), before);
            case PIXELS -> stepped(new CountStep(), before);
            case ORDER -> stepped(new OrderStep(), before);
            case CURRENT -> stepped(new CurrentStep(), before);
            case SUPPLY -> stepped(new SupplyStep(), before);
            case MOUNTING -> stepped(new MountStep(), before);
            case NOTHING -> Optional.of(before);
        };
    }

    private Optional<Findings> printer(FileFindings contents, Findings before) throws LeaveException, IOException {
        if (Toml.read(edited.text()).values().containsKey("printers")) {
            String command = "lampwright survey --into " + file + " --as NAME";
            bench.say(Phrase.of(
                    "refit_printers",
                    "This file gives its printers names. Listen to one of them with: " + command,
                    "command",
                    command));
            return Optional.empty();
        }
        return stepped(
                new ListenStep(printers, knowledge.inForce(edited.text()).broker(), contents.stateWords()), before);
    }

    /** Names and moves zones, then asks for the direction of those that are new or moved. */
    private Optional<Findings> zones(Findings before) throws LeaveException, IOException {
        Optional<Findings> named = stepped(new ZonesStep(), before);
        if (named.isEmpty()) {
            return named;
        }
        Map<String, Findings.Run> all = new LinkedHashMap<>(named.get().zones());
        Map<String, Findings.Run> other = new LinkedHashMap<>(all);
        other.entrySet().removeIf(zone -> zone.getValue().equals(before.zones().get(zone.getKey())));
        if (other.isEmpty()) {
            return named;
        }
        Optional<Findings> directed = stepped(new DirectionStep(), named.get().withZones(other));
        directed.ifPresent(found -> all.putAll(found.zones()));
        return directed.map(found -> found.withZones(all));
    }

    /** Runs a step; b goes back within it, or leaves it at its first question. */
    private Optional<Findings> stepped(Step step, Findings before) throws LeaveException, IOException {
        journal.forget(step.name());
        while (true) {
            bench.enter(step.name());
            terminal.enter(0, 0, step.name());
            bench.say("");
            bench.say(Phrase.of("step", capital(step.title())));
            try {
                Findings after = step.run(before, bench);
                bench.leave();
                return Optional.of(after);
            } catch (LeaveException e) {
                if (e.way() != LeaveException.Way.BACK) {
                    throw e;
                }
                if (!journal.forgetLast(step.name())) {
                    return Optional.empty();
                }
            }
        }
    }

    private static String capital(String title) {
        return Character.toUpperCase(title.charAt(0)) + title.substring(1) + ":";
    }

    /** Finds the controller of the file, or another one if the user says so. */
    private boolean connect() throws LeaveException, IOException {
        try {
            FileKnowledge.InForce inForce = knowledge.inForce(edited.text());
            Boards.Answering answering = BoardStep.at(inForce.port(), bench);
            board = Optional.of(
                    new Findings.Board(answering.port(), bench.boards().baud(), answering.here()));
            bench.lightUp(answering.port(), answering.here());
            return true;
        } catch (LeaveException e) {
            if (e.way() == LeaveException.Way.BACK) {
                return false;
            }
            throw e;
        }
    }

    /** Shows what would change, and writes it if the user agrees. */
    private void propose(Findings before, Findings after) throws LeaveException, IOException {
        bench.darken();
        String text = changed(before, after);
        List<String> changes = LineChanges.of(String.valueOf(file.getFileName()), edited.text(), text);
        if (changes.isEmpty()) {
            bench.say(Phrase.of("refit_same", "The file already says that: nothing to write."));
            return;
        }
        try {
            knowledge.inForce(text);
        } catch (IOException e) {
            bench.say(Phrase.of("refit_unfit", "This does not fit the rest of the file, which stays unchanged:"));
            e.getMessage().lines().forEach(line -> bench.say(Phrase.quoted("    " + line)));
            return;
        }
        bench.say(Phrase.of("refit_changes", "This is what would change:"));
        bench.say("");
        changes.forEach(line -> bench.say(Phrase.quoted("    " + line)));
        bench.say("");
        if (wanted()) {
            write(text);
        } else {
            bench.say(Phrase.of("refit_unwritten", "Nothing was written."));
        }
    }

    /** Where the port comes from a file that rigs share, it stays there unless the controller is at another one. */
    private String changed(Findings before, Findings after) throws IOException {
        String text = edited.text();
        String port = knowledge.inForce(text).port();
        TomlEditor editor = TomlEditor.of(text);
        FileChanges.write(editor, before, after);
        board.filter(known -> !known.port().equals(port))
                .ifPresent(known -> editor.set(List.of("controller", "port"), known.port()));
        return after.printer().equals(before.printer())
                ? editor.text()
                : knowledge.withPrinter(editor.text(), after.printer().orElseThrow());
    }

    private boolean wanted() throws LeaveException, IOException {
        try {
            return bench.askAside(Question.yesOrNo(
                            "Write this to " + file + "?",
                            "Lines with - are removed, lines with + are added; everything else stays. The file as it was"
                                    + (old.isEmpty()
                                            ? " is kept beside it."
                                            : " before this fitting is in " + old.get() + "."))
                    .coded("refit_write", "file", file));
        } catch (LeaveException e) {
            if (e.way() == LeaveException.Way.BACK) {
                return false;
            }
            throw e;
        }
    }

    /** The original file is kept once. */
    private void write(String text) throws IOException {
        if (old.isEmpty()) {
            old = Optional.of(edited.replace(text));
            bench.say(Phrase.of(
                    "refit_written",
                    file + " is written; the old version is in " + old.get() + ".",
                    "file",
                    file,
                    "old",
                    old.get()));
        } else {
            edited.replaceAgain(text);
            bench.say(Phrase.of("written", file + " is written.", "file", file));
        }
    }

    private void handOver() {
        if (old.isEmpty()) {
            terminal.say(Phrase.of("refit_unchanged", "Nothing has changed."));
            return;
        }
        knowledge.review(file).forEach(terminal::say);
        terminal.say(Phrase.of("refit_read", "A daemon that runs with this file applies the change by itself."));
    }
}
