package dev.lampwright.tool.plan;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.junit.jupiter.api.Test;

class WorstLoadTest {
    private static final double DARK = 0.001;
    private static final double FULL = 0.037;

    @Test
    void lightGoesWhereItCostsMost() {
        double[] amps = StripModel.worstOn(new double[] {1, 3, 2}, 0.1, 1, 1.7);
        assertArrayEquals(new double[] {0.1, 1, 0.6}, amps, 1e-12);
    }

    @Test
    void underAHighCeilingEverythingIsFull() {
        assertArrayEquals(new double[] {1, 1}, StripModel.worstOn(new double[] {1, 2}, 0.1, 1, 5), 1e-12);
    }

    @Test
    void theDarkStripIsThereEvenOverTheCeiling() {
        assertArrayEquals(new double[] {0.1, 0.1}, StripModel.worstOn(new double[] {1, 2}, 0.1, 1, 0.05), 1e-12);
    }

    /** The same as a linear program, solved by the simplex method in Apache Commons Math. */
    @Test
    void noOtherLoadIsWorse() {
        Random random = new Random(5);
        for (int round = 0; round < 30; round++) {
            double[] ohms = random.doubles(2 + random.nextInt(20), 0, 3).toArray();
            double ceiling = ohms.length * (DARK + random.nextDouble() * FULL);
            double[] amps = StripModel.worstOn(ohms, DARK, FULL, ceiling);
            double drop = IntStream.range(0, ohms.length)
                    .mapToDouble(i -> ohms[i] * amps[i])
                    .sum();
            assertEquals(simplex(ohms, ceiling), drop, 1e-9);
        }
    }

    private static double simplex(double[] ohms, double ceiling) {
        Collection<LinearConstraint> limits = new ArrayList<>();
        double[] all = new double[ohms.length];
        Arrays.fill(all, 1);
        limits.add(new LinearConstraint(all, Relationship.LEQ, ceiling));
        for (int i = 0; i < ohms.length; i++) {
            double[] one = new double[ohms.length];
            one[i] = 1;
            limits.addAll(List.of(
                    new LinearConstraint(one, Relationship.GEQ, DARK),
                    new LinearConstraint(one, Relationship.LEQ, FULL)));
        }
        return new SimplexSolver()
                .optimize(
                        new MaxIter(1000),
                        new LinearObjectiveFunction(ohms, 0),
                        new LinearConstraintSet(limits),
                        GoalType.MAXIMIZE)
                .getValue();
    }
}
