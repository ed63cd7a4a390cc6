package dev.lampwright.tool.survey;

/** A fault's text is empty for most of the time, or a few words that are no states. */
final class FaultTextEvidence implements Evidence {
    @Override
    public Clue weigh(Trail trail, Role role) {
        if (role != Role.FAULT_TEXT || trail.numeric()) {
            return Clue.NONE;
        }
        boolean empty = trail.words().stream().anyMatch(word -> word.isBlank() || word.equals("null"));
        boolean sentence = trail.words().stream().anyMatch(word -> word.strip().contains(" "));
        boolean truth = trail.words().stream().anyMatch(word -> word.equals("true") || word.equals("false"));
        double weight = (empty ? 1.5 : 0) + (sentence ? 1 : 0) - (truth ? 6 : 0);
        return new Clue(weight, sentence ? "has text of several words" : "");
    }
}
