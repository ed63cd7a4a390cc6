package dev.lampwright.tool.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.lampwright.protocol.Frame;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

class CameraTest {
    private static final long MS = TimeUnit.MILLISECONDS.toNanos(1);

    private final Film.Subject subject = Films.subject(2, "work", "colour");
    private final Frame frame = new Frame(6, 4);

    private void light(int first, int second, int... duties) {
        for (int i = 0; i < 6; i++) {
            frame.strip()[i] = (byte) (i < 3 ? first : second);
        }
        System.arraycopy(duties, 0, frame.duties(), 0, duties.length);
    }

    /** 0xBC is 128/255 of light, encoded by IEC 61966-2-1. */
    @Test
    void aShotOfOneFrameIsTheFrame() {
        Camera camera = new Camera(subject, 10);
        light(255, 128, 65_535, 65_535, 0, 65_535);
        camera.see(0, frame, "idle");
        Film.Shot shot = camera.film().shots().get(0);
        assertEquals(0xFFFFFF, shot.pixel(0));
        assertEquals(0xBCBCBC, shot.pixel(1));
        assertEquals(0xFFFFFF, shot.lamp(0));
        assertEquals(0xFF00FF, shot.lamp(1));
        assertEquals("idle", shot.caption());
    }

    /** The eye and a film add light up, so the mean is taken before it is encoded: half of full light is 0xBC, not 0x80. */
    @Test
    void aShotIsTheMeanLightOfItsFrames() {
        Camera camera = new Camera(subject, 10);
        light(255, 0, 0, 0, 0, 0);
        camera.see(0, frame, "idle");
        light(0, 0, 65_535, 0, 0, 0);
        camera.see(50 * MS, frame, "done");
        light(255, 255, 0, 0, 0, 0);
        camera.see(100 * MS, frame, "held");
        Film film = camera.film();
        assertEquals(2, film.shots().size());
        assertEquals(0xBCBCBC, film.shots().get(0).pixel(0));
        assertEquals(0xBCBCBC, film.shots().get(0).lamp(0));
        assertEquals("done", film.shots().get(0).caption());
        assertEquals(0xFFFFFF, film.shots().get(1).pixel(0));
    }

    @Test
    void whereNoFramesWereMadeTheLightStays() {
        Camera camera = new Camera(subject, 10);
        light(255, 0, 0, 0, 0, 0);
        camera.see(0, frame, "idle");
        light(0, 255, 0, 0, 0, 0);
        camera.see(350 * MS, frame, "done");
        Film film = camera.film();
        assertEquals(4, film.shots().size());
        assertEquals(0xFFFFFF, film.shots().get(2).pixel(0));
        assertEquals(0x000000, film.shots().get(3).pixel(0));
        assertEquals(0.4, film.seconds(), 1e-9);
    }

    @Test
    void oneFrameAShotAtTheRateOfTheFrames() {
        Camera camera = new Camera(subject, 60);
        for (long tick = 0; tick < 600; tick++) {
            light((int) (tick % 256), 0, 0, 0, 0, 0);
            camera.see(TimeUnit.SECONDS.toNanos(tick) / 60, frame, "");
        }
        Film film = camera.film();
        assertEquals(600, film.shots().size());
        assertEquals(0xFFFFFF, film.shots().get(255).pixel(0));
        assertEquals(0x000000, film.shots().get(256).pixel(0));
    }
}
