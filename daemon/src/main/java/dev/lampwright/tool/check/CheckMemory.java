package dev.lampwright.tool.check;

import dev.lampwright.config.Config;
import dev.lampwright.config.LightSpec;
import dev.lampwright.printer.Bindings;
import dev.lampwright.protocol.Setup;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * The results of looks that were drawn before on the same lights, so that checking a file again after an edit of one look does not draw the
 * others again. Safe for many threads.
 */
public final class CheckMemory {
    private static final int MOST = 64;

    private final Map<Key, Drawing> drawings = recent();
    private final Map<Key, FlashCheck.Flashing> flashings = recent();

    /** What a look does when it is drawn by itself. */
    record Drawing(Optional<Rehearsal.Failing> failing, boolean held) {}

    /** All that decides how a look is drawn by itself, on the whole strip and on the shorter one. */
    record Key(
            Setup setup, int framesPerSecond, Bindings bindings, LightSpec whole, Setup shortSetup, LightSpec shorter) {
        static Key of(Config whole, Config shorter, String look) {
            return new Key(
                    whole.setup(),
                    whole.framesPerSecond(),
                    whole.bindings(),
                    OneLook.of(whole, look).light(),
                    shorter.setup(),
                    OneLook.of(shorter, look).light());
        }
    }

    private static <V> Map<Key, V> recent() {
        return new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<Key, V> eldest) {
                return size() > MOST;
            }
        };
    }

    Drawing drawing(Key key, Supplier<Drawing> draw) {
        return known(drawings, key, draw);
    }

    FlashCheck.Flashing flashing(Key key, Supplier<FlashCheck.Flashing> draw) {
        return known(flashings, key, draw);
    }

    private <V> V known(Map<Key, V> known, Key key, Supplier<V> draw) {
        Optional<V> before;
        synchronized (this) {
            before = Optional.ofNullable(known.get(key));
        }
        V value = before.orElseGet(draw);
        synchronized (this) {
            known.put(key, value);
        }
        return value;
    }
}
