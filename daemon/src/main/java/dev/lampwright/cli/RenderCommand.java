package dev.lampwright.cli;

import dev.lampwright.config.Config;
import dev.lampwright.config.ConfigException;
import dev.lampwright.file.FileFailure;
import dev.lampwright.look.LookSpec;
import dev.lampwright.protocol.Frame;
import dev.lampwright.tool.picture.BarePicture;
import dev.lampwright.tool.picture.Camera;
import dev.lampwright.tool.picture.Film;
import dev.lampwright.tool.picture.MovingPicture;
import dev.lampwright.tool.picture.StillPicture;
import dev.lampwright.tool.replay.Replay;
import dev.lampwright.tool.replay.SignalSweep;
import dev.lampwright.tool.replay.Timeline;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The command {@code render}: pictures of what the lights show. */
@Command(
        name = "render",
        header = "Draw what the lights show, as a picture.",
        description = {
            "Draws what the lights show, without any hardware: one look, a recorded or hand-written status, or (by"
                    + " default) a simulated job. The picture shows exactly the bytes that would be sent."
        },
        exitCodeListHeading = "%nExit status:%n",
        exitCodeList = {"0:the picture is written", "1:an error occurred", "2:usage error"},
        footer = {
            "",
            "Example: lampwright render --look warming",
            "Example: lampwright render alder.toml --status monday.jsonl --out monday.gif"
        })
final class RenderCommand implements Callable<Integer> {
    private static final double LOOK_SECONDS = 12;
    private static final double SECONDS_AFTER_LAST_LINE = 2;
    private static final double MOST_SECONDS = 1e6;
    private static final int MOST_SHOTS = 6000;
    private static final double NANOS_PER_SECOND = 1e9;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "FILE",
            arity = "0..1",
            description = "The configuration file. Without it, the built-in looks on a strip of 60 pixels.")
    private Optional<Path> file;

    @Mixin
    private RigOption rig;

    @Option(
            names = "--look",
            paramLabel = "NAME",
            completionCandidates = LooksCommand.Names.class,
            description = "Draw only this look: one from the file, a built-in one, or one that lampwright looks lists."
                    + " Without --status, everything heats up meanwhile and a job runs from start to end.")
    private Optional<String> lookName;

    @Option(
            names = "--status",
            paramLabel = "FILE",
            description = "Play this back: JSON lines as run --record writes them.")
    private Optional<Path> status;

    @Option(
            names = "--seconds",
            paramLabel = "N",
            description = "How long. Default: 12 for a look, otherwise two seconds longer than the status.")
    private Optional<Double> seconds;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description =
                    "Where to write: a .png is a still picture with time running down, a .gif is animated. Default:"
                            + " NAME.png in this folder, where NAME is the look, the status file, or job.")
    private Optional<Path> out;

    @Option(
            names = "--frames-per-s",
            paramLabel = "N",
            description =
                    "Pictures per second in a .gif, by default 20, or lines per second in a .png, by default as many"
                            + " as fit well; each shows the mean light of its time.")
    private Optional<Double> shotsPerSecond;

    @Option(
            names = "--bare",
            description = "In a .gif, draw only the strip, small and without text, as an illustration.")
    private boolean bare;

    @Override
    public Integer call() throws ConfigException, IOException {
        Path target = out.orElseGet(() -> Path.of(name() + ".png"));
        boolean moving = isMoving(target);
        Config config = file.isPresent()
                ? KeptLooks.readToDraw(rig.file(file.get()), spec.commandLine().getErr())
                : StandInLights.usual();
        Optional<LookSpec> look = look(config);
        Timeline timeline = timeline(config);
        double length = length(timeline);
        double rate = rate(moving, length, config.framesPerSecond());
        Replay replay = look.isPresent() ? Replay.of(config, look.get(), timeline) : Replay.of(config, timeline);
        Film film = film(config, replay, length, rate);
        write(target, picture(film, moving));
        spec.commandLine().getOut().println(target + ": " + note(config, length));
        return ExitCode.OK;
    }

    private byte[] picture(Film film, boolean moving) {
        if (bare) {
            return BarePicture.gif(film);
        }
        return moving ? MovingPicture.gif(film) : StillPicture.png(film);
    }

    private String name() {
        return lookName.or(() -> status.map(RenderCommand::stem)).orElse("job");
    }

    private static String stem(Path path) {
        return path.getFileName().toString().replaceFirst("\\.[^.]*$", "");
    }

    private boolean isMoving(Path target) {
        String ending = target.toString().toLowerCase(Locale.ROOT);
        if (!ending.endsWith(".png") && !ending.endsWith(".gif")) {
            throw wrong("--out is " + target + "; give a name that ends in .png or .gif");
        }
        if (bare && ending.endsWith(".png")) {
            throw wrong("--bare is for pictures that move; give --out a name that ends in .gif");
        }
        return ending.endsWith(".gif");
    }

    private Optional<LookSpec> look(Config config) {
        return lookName.map(name -> config.light()
                .look(name)
                .orElseThrow(() -> wrong("--look is " + name + "; there are "
                        + String.join(", ", config.looks().keySet()) + ", and those that lampwright looks lists")));
    }

    private Timeline timeline(Config config) throws IOException {
        if (status.isPresent()) {
            return Timeline.read(status.get());
        }
        return lookName.isPresent()
                ? SignalSweep.timeline(
                        seconds("--seconds", seconds.orElse(LOOK_SECONDS)),
                        config.light().room().ambientC(),
                        config.bindings().own().keySet())
                : Timeline.example();
    }

    private double length(Timeline timeline) {
        boolean alone = lookName.isPresent() && status.isEmpty();
        double usual = alone ? LOOK_SECONDS : Math.max(0, timeline.seconds()) + SECONDS_AFTER_LAST_LINE;
        return seconds("--seconds", seconds.orElse(usual));
    }

    private double seconds(String option, double value) {
        if (!(value > 0 && value <= MOST_SECONDS)) {
            throw wrong(option + " is " + value + "; write a number of seconds above 0, at most 1000000");
        }
        return value;
    }

    private double rate(boolean moving, double length, int framesPerSecond) {
        double usual = moving
                ? Math.min(MovingPicture.USUAL_SHOTS_PER_SECOND, framesPerSecond)
                : StillPicture.shotsPerSecond(length, framesPerSecond);
        double most = moving ? Math.min(MovingPicture.MOST_SHOTS_PER_SECOND, framesPerSecond) : framesPerSecond;
        double rate = shotsPerSecond.orElse(usual);
        if (!(rate > 0 && rate <= most)) {
            throw wrong("--frames-per-s is " + rate + "; write a number above 0, here at most " + Math.round(most));
        }
        if (rate * length > MOST_SHOTS) {
            throw wrong(length + " s at " + rate + " a second are more than " + MOST_SHOTS
                    + " pictures or lines; give a smaller --seconds or --frames-per-s");
        }
        return rate;
    }

    private Film film(Config config, Replay replay, double length, double rate) {
        Film.Subject subject = new Film.Subject(
                name(), note(config, length), config.fitting(), config.setup().order());
        Camera camera = new Camera(subject, rate);
        Frame frame =
                new Frame(config.setup().stripBytes(), config.setup().dimmers().size());
        replay.next(frame);
        while (replay.nanos() < length * NANOS_PER_SECOND) {
            camera.see(replay.nanos(), frame, caption(replay));
            replay.next(frame);
        }
        return camera.film();
    }

    private static String note(Config config, double length) {
        String digits = length == Math.rint(length) ? "%.0f" : "%.1f";
        return String.format(
                Locale.ROOT, digits + " s, %d pixels", length, config.setup().pixels());
    }

    private String caption(Replay replay) {
        if (lookName.isPresent() && status.isEmpty()) {
            return "";
        }
        String state = replay.state().word();
        return lookName.isPresent() || replay.look().equals(state) ? state : state + ": " + replay.look();
    }

    private static void write(Path target, byte[] bytes) throws IOException {
        try {
            Files.write(target, bytes);
        } catch (IOException e) {
            throw FileFailure.ofWriting(target, e);
        }
    }

    private ParameterException wrong(String what) {
        return new ParameterException(spec.commandLine(), what);
    }
}
