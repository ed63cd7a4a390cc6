package dev.lampwright.cue;

import dev.lampwright.look.Canvas;
import dev.lampwright.look.Look;
import dev.lampwright.look.LookFault;
import dev.lampwright.look.Moment;
import dev.lampwright.signal.Signals;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * Shows looks: that of the first cue that holds, or one that somebody asks for, with a fade in linear light. A look that fades out keeps
 * moving; if a fade is interrupted, the light shown at that moment fades out, so there is never a step. An alarm takes precedence over
 * asks. Allocates nothing after construction; for one thread.
 */
public final class Stage {
    /** The event that says that pictures are being taken. */
    public static final String CAMERA = "camera";

    private static final double FADE_TO_WISH_S = 0.6;

    private final List<Cue> cues;
    /** Looks that can be asked for. Replaced as a whole when one is added, possibly by a thread other than the frame thread. */
    private volatile Map<String, Cue> wished;

    private final Moment moment;
    private final Canvas seen;
    private final Canvas before;
    private final Consumer<LookFault> faults;
    private Turn on;
    private Turn off;
    private String lastAsked = "";
    private boolean started;
    private boolean frozen = true;
    private boolean camera;

    /**
     * Creates an empty stage.
     *
     * @param cues the first that holds wins; the last one always holds
     * @param looks the looks that can be asked for, by name
     * @param signals what light can follow
     * @param seen the canvas that frames are drawn on
     * @param before another of the same size
     * @param faults receives each part of a look that fails, once
     */
    public Stage(
            List<Cue> cues,
            Map<String, Look> looks,
            Signals signals,
            Canvas seen,
            Canvas before,
            Consumer<LookFault> faults) {
        this.cues = List.copyOf(cues);
        wished = looks.values().stream().collect(Collectors.toMap(Look::name, Stage::wish));
        this.moment = new Moment(signals);
        this.seen = seen;
        this.before = before;
        this.faults = faults;
        on = new Turn(cues.get(cues.size() - 1));
        off = new Turn(on.cue());
    }

    private static Cue wish(Look look) {
        return new Cue(look, List.of(), FADE_TO_WISH_S, Easing.EASE_IN_OUT);
    }

    /**
     * Whether a look with a name can be asked for.
     *
     * @param name the name
     * @return true for the looks given at construction or added later
     */
    public boolean knows(String name) {
        return wished.containsKey(name);
    }

    /**
     * Adds a look that can be asked for. Any thread may call this, one at a time, before the first frame in which the look is asked for.
     *
     * @param look the look
     */
    public void add(Look look) {
        Map<String, Cue> more = new HashMap<>(wished);
        more.put(look.name(), wish(look));
        wished = more;
    }

    /**
     * The light as last drawn. If it is filled before the first frame, the first look fades in over that.
     *
     * @return the same canvas each time
     */
    public Canvas seen() {
        return seen;
    }

    /**
     * Draws a frame.
     *
     * @param situation the current situation; its time is never earlier than the previous one
     * @return the canvas with the frame
     */
    public Canvas draw(Situation situation) {
        long nanos = situation.nanos();
        Cue next = wish(situation, choose(situation));
        double fade = fadeSeconds(next, situation);
        if (!started || next.look() != on.cue().look()) {
            putOn(next, fade, nanos);
        } else if (next != on.cue() && next.fadeSeconds() == 0) {
            on.cutIn(next);
        }
        camera = situation.event(CAMERA);
        float share = on.faded(nanos);
        if (share < 1 && !frozen) {
            off.draw(moment, nanos, camera, before, faults);
        }
        on.draw(moment, nanos, camera, seen, faults);
        if (share < 1) {
            seen.mix(before, 1 - share);
        }
        return seen;
    }

    /**
     * How long the last frame stays the same, if nothing new is heard and nobody asks for anything.
     *
     * @param situation the situation of the last frame
     * @return ns: 0 if it may change
     */
    public long stillFor(Situation situation) {
        long nanos = situation.nanos();
        long still = on.faded(nanos) < 1 ? 0 : on.cue().look().stillFor(moment);
        for (int i = 0; i < cues.size() && still > 0; i++) {
            still = Math.min(still, cues.get(i).stillFor(situation));
        }
        return Math.min(
                still,
                Math.min(situation.eventStillFor(CAMERA), situation.wishes().stillFor(nanos)));
    }

    /**
     * Lets time pass while the last frame stays the same.
     *
     * @param nanos the time
     */
    public void pass(long nanos) {
        on.pass(nanos, camera);
    }

    /**
     * The current look, or the one fading in.
     *
     * @return that of the last frame drawn
     */
    public Look look() {
        return on.cue().look();
    }

    /**
     * Which cues held in the last frame. Any thread may ask.
     *
     * @return whether it did, for each, in their order
     */
    public List<Boolean> held() {
        return cues.stream().map(Cue::held).toList();
    }

    /** Evaluates all cues, including those after one that holds, because each remembers its result in the previous frame. */
    private Cue choose(Situation situation) {
        Cue chosen = cues.get(cues.size() - 1);
        for (int i = cues.size() - 1; i >= 0; i--) {
            if (cues.get(i).holds(situation)) {
                chosen = cues.get(i);
            }
        }
        return chosen;
    }

    private Cue wish(Situation situation, Cue chosen) {
        if (situation.alarm() != AlarmState.NORMAL) {
            return chosen;
        }
        return wished.getOrDefault(situation.wishes().lookAt(situation.nanos()), chosen);
    }

    /** In the frame in which an ask starts or ends a look, the fade takes as long as the ask says; otherwise as long as the cue says. */
    private double fadeSeconds(Cue next, Situation situation) {
        String asked = situation.wishes().lookAt(situation.nanos());
        boolean changed = started && !asked.equals(lastAsked);
        lastAsked = asked;
        float wanted = situation.wishes().fade(Wish.LOOK_FADE);
        boolean wish = changed && situation.alarm() == AlarmState.NORMAL && !Float.isNaN(wanted);
        return wish ? wanted : next.fadeSeconds();
    }

    private void putOn(Cue next, double fadeSeconds, long nanos) {
        frozen = !started || on.faded(nanos) < 1;
        if (frozen) {
            before.copyFrom(seen);
        }
        Turn over = off;
        off = on;
        on = over;
        on.begin(next, fadeSeconds, nanos);
        started = true;
    }
}
