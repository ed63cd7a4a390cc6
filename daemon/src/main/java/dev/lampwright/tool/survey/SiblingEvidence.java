package dev.lampwright.tool.survey;

import java.util.List;

/** A temperature and its target are next to each other: their names differ in one place only. */
final class SiblingEvidence implements PairEvidence {
    @Override
    public Clue weigh(Trail actual, Trail target) {
        List<List<String>> one = actual.names().levels();
        List<List<String>> other = target.names().levels();
        if (one.size() != other.size()) {
            return Clue.against(2);
        }
        int different = 0;
        double near = 0;
        for (int i = 0; i < one.size(); i++) {
            if (!one.get(i).equals(other.get(i))) {
                different++;
                near += isNext(one.get(i), other.get(i)) ? 0.5 : 0;
            }
        }
        return switch (different) {
            case 0 -> Clue.NONE;
            case 1 -> new Clue(2 + near, "both are next to each other");
            case 2 -> new Clue(0.5, "");
            default -> Clue.against(different - 1);
        };
    }

    private static boolean isNext(List<String> one, List<String> other) {
        return one.size() == 1 && other.size() == 1 && ValueName.isNext(one.get(0), other.get(0));
    }
}
