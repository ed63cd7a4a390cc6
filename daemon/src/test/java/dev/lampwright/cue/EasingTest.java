package dev.lampwright.cue;

import static dev.lampwright.testing.Bounds.assertAbove;
import static dev.lampwright.testing.Bounds.assertAtLeast;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.geom.CubicCurve2D;
import java.awt.geom.FlatteningPathIterator;
import java.awt.geom.PathIterator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Against W3C CSS Easing Functions Level 1 and the JDK's own cubic curves. */
class EasingTest {
    @Test
    void theWordsAreThoseOfTheStandard() {
        assertEquals(
                List.of("linear", "ease", "ease-in", "ease-out", "ease-in-out"),
                List.of(Easing.values()).stream().map(Easing::word).toList());
    }

    @ParameterizedTest
    @EnumSource
    void goesFromNothingToAllAndNeverBack(Easing easing) {
        assertEquals(0, easing.at(0), 1e-8);
        assertEquals(1, easing.at(1), 1e-8);
        double before = 0;
        for (int i = 0; i <= 1000; i++) {
            double now = easing.at(i / 1000.0);
            assertAtLeast(before - 1e-9, now);
            before = now;
        }
    }

    /** The keywords' control points, as section 2.2.1 lists them, drawn by java.awt.geom. */
    @ParameterizedTest
    @CsvSource({
        "LINEAR, 0, 0, 1, 1",
        "EASE, 0.25, 0.1, 0.25, 1",
        "EASE_IN, 0.42, 0, 1, 1",
        "EASE_OUT, 0, 0, 0.58, 1",
        "EASE_IN_OUT, 0.42, 0, 0.58, 1"
    })
    void isTheCurveOfItsKeyword(Easing easing, double x1, double y1, double x2, double y2) {
        CubicCurve2D curve = new CubicCurve2D.Double(0, 0, x1, y1, x2, y2, 1, 1);
        PathIterator points = new FlatteningPathIterator(curve.getPathIterator(null), 1e-7, 12);
        double[] point = new double[6];
        int count = 0;
        for (; !points.isDone(); points.next()) {
            points.currentSegment(point);
            assertEquals(point[1], easing.at(point[0]), 1e-5, "at " + point[0]);
            count++;
        }
        assertAbove(1, count);
    }
}
