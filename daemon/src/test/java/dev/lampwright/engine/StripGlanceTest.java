package dev.lampwright.engine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.lampwright.config.Config;
import dev.lampwright.protocol.Frame;
import org.junit.jupiter.api.Test;

class StripGlanceTest {
    private final Config config = Configs.of(2, "GRB", "");
    private FrameTap tap = new FrameTap(config);
    private final StripGlance glance = new StripGlance(() -> tap);
    private final Frame frame = new Frame(config.setup().stripBytes(), 0);

    @Test
    void itTellsWhatTheNewestFrameLooksLike() {
        assertFalse(glance.look());
        assertEquals("", glance.hex());
        frame.strip()[1] = (byte) 255;
        tap.leave(frame);
        assertTrue(glance.look());
        assertEquals("ff0000000000", glance.hex());
        tap.leave(frame);
        assertFalse(glance.look(), "nothing is another colour");
    }

    @Test
    void aDarkStripIsSomethingToBeSeenToo() {
        glance.look();
        tap.leave(frame);
        assertTrue(glance.look());
        assertEquals("000000000000", glance.hex());
    }

    @Test
    void itFollowsToAnotherConfigurationAndLeavesTheOldOne() {
        glance.look();
        FrameTap old = tap;
        tap = new FrameTap(Configs.of(1, "GRB", ""));
        glance.look();
        assertEquals(0, old.looking());
        assertEquals(1, tap.looking());
        glance.close();
        assertEquals(0, tap.looking());
    }
}
