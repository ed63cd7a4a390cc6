package dev.lampwright.metrics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The reader accepts what follows the text format, and nothing else. */
class ExpositionTest {
    @Test
    void readsWhatKeepsToTheFormat() {
        Exposition read = Exposition.parse("""
                # HELP a_total Some help.
                # TYPE a_total counter
                a_total{b="c \\"d\\"",e="f"} 1.5
                # TYPE g_seconds histogram
                g_seconds_bucket{le="+Inf"} 2
                g_seconds_sum 0.5
                g_seconds_count 2
                """);
        assertEquals(1.5, read.value("a_total", Map.of("b", "c \\\"d\\\"", "e", "f")));
        assertEquals("Some help.", read.families().get("a_total").help());
        assertEquals(3, read.families().get("g_seconds").samples().size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a_total 1\n",
                "# TYPE a_total counter\na_total 1",
                "# TYPE a_total count\na_total 1\n",
                "# TYPE a_total counter\na_total x\n",
                "# TYPE a_total counter\na_total{b=c} 1\n",
                "# TYPE a_total counter\na_total{b=\"c\",b=\"d\"} 1\n",
                "# TYPE a_total counter\na_total 1\na_total 2\n",
                "# TYPE a_total counter\na_total 1\n# HELP a_total Late.\n",
                "# TYPE 1a counter\n1a 1\n"
            })
    void complainsOfWhatDoesNot(String text) {
        assertThrows(IllegalArgumentException.class, () -> Exposition.parse(text));
    }
}
