package dev.lampwright.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** A whole file for an invented printer, with a look and a cue. */
class WholeFileTest {
    private static final String EXAMPLE = """
            frames_per_s = 60

            [broker]
            url = "mqtt://127.0.0.1:1883"          # mqtts:// with ca_file; username, password_file

            [printer]
            silent_after_s = 20
            ambient_C = 22

            [printer.state]
            topic = "shop/alder/job"
            at = "/phase"                           # JSON Pointer, RFC 6901; left out, the payload itself is the value
            warming = ["PREHEAT"]
            printing = ["RUN"]
            fault = ["ALARM*"]

            [printer.readings]
            bed.actual_C   = { topic = "shop/alder/heat", at = "/plate/now" }
            bed.setpoint_C   = { topic = "shop/alder/heat", at = "/plate/set" }
            nozzle.actual_C = { topic = "shop/alder/heat", at = "/tip/now" }
            nozzle.setpoint_C = { topic = "shop/alder/heat", at = "/tip/set" }
            job.progress   = { topic = "shop/alder/job", at = "/percent", scale = 0.01 }

            [controller]
            port = "/dev/ttyACM0"
            baud = 500000

            [supply]
            volts = 5.0
            ceiling_mA = 1500

            [strip]
            pixels = 30
            order = "GRB"
            channel_mA = 12
            idle_mA = 1

            [zones]
            bed = "0-9"
            nozzle = "10-19"
            job = "29-20"                           # counted backwards: this zone runs towards the controller

            [dimmers]
            work = { channel = 0, volts = 24, full_mA = 800 }

            [looks.preheat]
            dimmers = { work = 0.2 }
            layers = [
              { zone = "bed",    paint = "scale", colours = ["midnightblue", "orangered"], by = "bed.heat", extent = "bar" },
              { zone = "nozzle", paint = "scale", colours = ["midnightblue", "orangered"], by = "nozzle.heat", extent = "bar" },
            ]

            [[cues]]
            state = "warming"
            look = "preheat"
            fade_s = 1.5
            """;

    @Test
    void isUnderstood() throws ConfigException {
        Config config = ConfigFile.read(EXAMPLE, "alder.toml");
        assertEquals(11, config.looks().size());
        assertEquals(11, config.cues().size());
        assertSame(config.looks().get("preheat"), config.cues().get(0).look());
        assertTrue(config.looks().get("preheat").steadyForCamera(), "it lights the work");
        assertFalse(config.looks().get("idle").steadyForCamera());
        assertEquals("29-20", config.fitting().zones().get("job").toString());
    }
}
