package dev.lampwright.tool.fit;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Frame;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.Setup;
import dev.lampwright.protocol.SupplyDraw;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * A controller with a {@link StripModel}, without a line in between, on its own clock: every frame that passes the guards is seen and
 * measured.
 */
final class ModelBoards implements Boards, Eyes {
    private static final int RATE = 30;
    private static final long FRAME = TimeUnit.SECONDS.toNanos(1) / RATE;

    /** How long somebody takes to answer. */
    private static final long ANSWER_NANOS = TimeUnit.MILLISECONDS.toNanos(500);

    /** How many more moves one way than the other show the direction of a band; it jumps back once per run. */
    private static final int SEEN_MOVES = 3;

    private final Here here;
    private final StripModel strip;
    private final List<Setup> setups = new ArrayList<>();
    private Setup setup;
    private GuardedFrames guarded;
    private Scene scene = Scene.DARK;
    private byte[] shown = new byte[0];
    private int[] duties = new int[0];
    private long nanos;
    private long begun;
    private double mostBeforeSupply;
    private double mostReckonedBeforeSupply;
    private int dimmed;
    private int closed;
    private int away;

    ModelBoards(Here here, StripModel strip) {
        this.here = here;
        this.strip = strip;
    }

    /** The set-ups so far. */
    List<Setup> setups() {
        return setups;
    }

    /** The most that the strip has drawn in any frame while the ceiling was the safe one, in mA. */
    double mostBeforeSupply() {
        return mostBeforeSupply;
    }

    /** The same as the guards calculate it. */
    double mostReckonedBeforeSupply() {
        return mostReckonedBeforeSupply;
    }

    /** Frames that demanded more than a limit, rather than just too fast a change. */
    int dimmed() {
        return dimmed;
    }

    /** Whether every light that was created has been closed. */
    boolean dark() {
        return closed > 0 && setup == null;
    }

    /** From now on the controller is missing for this many checks. */
    void goAway(int looks) {
        away = looks;
    }

    @Override
    public List<Boards.Candidate> look() {
        return List.of(ask("memory"));
    }

    @Override
    public Boards.Candidate ask(String port) {
        return new Boards.Answering("memory", "", here);
    }

    @Override
    public int baud() {
        return 500_000;
    }

    @Override
    public ShownLight light(String port, Here told) {
        return new ShownLight() {
            @Override
            public Optional<Phrase> show(Setup next, Scene nextScene) {
                return ModelBoards.this.show(next, nextScene);
            }

            @Override
            public boolean steady() {
                return setup != null && away == 0;
            }

            @Override
            public void close() {
                closed++;
                setup = null;
                shown = new byte[0];
            }
        };
    }

    private Optional<Phrase> show(Setup next, Scene nextScene) {
        if (away > 0) {
            away--;
            return Optional.of(Phrase.plain("the controller has gone silent"));
        }
        if (!next.equals(setup)) {
            setup = next;
            setups.add(next);
            guarded = new GuardedFrames(next, RATE);
        }
        nanos += ANSWER_NANOS;
        scene = nextScene;
        begun = nanos;
        int frames = 0;
        while (!frame()) {
            if (frames++ > 10 * RATE) {
                throw new AssertionError("the guards never let the scene through");
            }
        }
        return Optional.empty();
    }

    private boolean frame() {
        nanos += FRAME;
        Frame frame = new Frame(setup.stripBytes(), setup.dimmers().size());
        boolean asIs = guarded.make(scene, (nanos - begun) / 1e9, nanos, frame);
        Frame wish = new Frame(setup.stripBytes(), setup.dimmers().size());
        scene.draw((nanos - begun) / 1e9, wish);
        dimmed += milliamps(wish) > setup.ceilingsMilliamps().get(0) ? 1 : 0;
        shown = frame.strip().clone();
        duties = frame.duties().clone();
        if (setup.ceilingsMilliamps().get(0) <= FittingSetups.SAFE_CEILING) {
            mostBeforeSupply = Math.max(mostBeforeSupply, strip.milliamps(shown));
            mostReckonedBeforeSupply = Math.max(mostReckonedBeforeSupply, milliamps(frame));
        }
        return asIs;
    }

    private double milliamps(Frame frame) {
        SupplyDraw draw = new SupplyDraw(setup);
        return (draw.idle(0) + draw.load(0, frame)) / (double) SupplyDraw.GRAINS_PER_MILLIAMP;
    }

    @Override
    public List<StripModel.Pixel> pixels() {
        return strip.clock(shown);
    }

    @Override
    public int drift() {
        int away = 0;
        double before = -1;
        while (Math.abs(away) < SEEN_MOVES) {
            frame();
            double now = centre();
            away += now < 0 || before < 0 ? 0 : (int) Math.signum(now - before);
            before = now;
        }
        return away;
    }

    private double centre() {
        return RecordedEyes.centre(pixels());
    }

    @Override
    public int dimmer() {
        for (int i = 0; i < duties.length; i++) {
            if (duties[i] > 0) {
                return i;
            }
        }
        return -1;
    }

    @Override
    public double meter() {
        return Math.round(strip.milliamps(shown) * 10) / 10.0;
    }
}
