package dev.lampwright.tool.survey;

/** An event is told in words for beginning and end, that come and go. */
final class EventEvidence implements Evidence {
    private static final int MOST_WORDS = 8;

    @Override
    public Clue weigh(Trail trail, Role role) {
        if (role != Role.CAMERA || trail.numeric()) {
            return Clue.NONE;
        }
        EventWords words = EventWords.of(trail.words());
        if (words.begin().isEmpty() || trail.words().size() > MOST_WORDS || trail.hasMoreWords()) {
            return Clue.against(6);
        }
        return new Clue(2, "begins with “" + words.begin().get(0) + "”");
    }
}
