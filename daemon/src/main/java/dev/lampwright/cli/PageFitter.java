package dev.lampwright.cli;

import dev.lampwright.config.TokenFiles;
import dev.lampwright.engine.Daemon;
import dev.lampwright.json.Json;
import dev.lampwright.page.Bench;
import dev.lampwright.page.Fitter;
import dev.lampwright.tool.fit.FitReply;
import dev.lampwright.tool.fit.HeldFitting;
import dev.lampwright.tool.fit.SerialBoards;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/** The guided fitting, for the page. */
final class PageFitter implements Fitter {
    private final HeldFitting fitting;
    private final boolean first;

    private PageFitter(HeldFitting fitting, boolean first) {
        this.fitting = fitting;
        this.first = first;
    }

    /**
     * The fittings of running daemons, which release their controllers for that time.
     *
     * @param files the configuration of a rig; the only one's name is empty
     */
    static Maker of(Function<String, Path> files) {
        return (String rig, Daemon daemon) -> Optional.of(new PageFitter(
                new HeldFitting(
                        rig,
                        files.apply(rig),
                        new SerialBoards(
                                List.of(), daemon.tap().config().controller().baud()),
                        SurveyedPrinter::new,
                        new ConfigKnowledge(files.apply(rig)),
                        new Lent(daemon),
                        OptionalInt.empty(),
                        System::nanoTime),
                false));
    }

    /**
     * The fitting of a configuration that does not exist yet.
     *
     * @param file where it will be
     * @param pagePort the port of the page, if it is another than usual
     */
    static PageFitter first(Path file, OptionalInt pagePort) {
        return new PageFitter(
                new HeldFitting(
                        "",
                        file,
                        new SerialBoards(List.of(), BaudOption.USUAL),
                        SurveyedPrinter::new,
                        new ConfigKnowledge(file),
                        HeldFitting.Controller.FREE,
                        pagePort,
                        System::nanoTime),
                true);
    }

    /** The controller of a running daemon. */
    private record Lent(Daemon daemon) implements HeldFitting.Controller {
        @Override
        public void release() {
            daemon.releaseController();
        }

        @Override
        public void resume() {
            daemon.resumeController();
        }
    }

    @Override
    public Bench.Reply answer(String what, String json, boolean elsewhere) {
        FitReply reply = fitting.answer(what, json, first && elsewhere);
        return new Bench.Reply(reply.status(), Json.of(reply.body()));
    }

    @Override
    public TokenFiles nextTokens() {
        return fitting.tokens()
                .map(made -> new TokenFiles(Optional.of(made.asking()), Optional.empty(), Optional.of(made.editing())))
                .orElse(TokenFiles.NONE);
    }

    /** Whether somebody is fitting. */
    boolean isRunning() {
        return fitting.isRunning();
    }

    /** Whether a browser has been sent how it ended. */
    boolean isEndSeen() {
        return fitting.isEndSeen();
    }

    @Override
    public void close() {
        fitting.close();
    }
}
