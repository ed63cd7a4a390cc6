package dev.lampwright.tool.survey;

import dev.lampwright.payload.Unit;

/**
 * One kind of evidence of what a value may be. {@link EvidenceTable} applies each kind to every value by itself; only {@link PlaceEvidence}
 * and {@link MeaningEvidence} come later, in {@link Assignment}, because they need what was found about other values.
 */
sealed interface Evidence
        permits Evidence.OfKind,
                Evidence.OfUnit,
                Evidence.OfPace,
                Evidence.OfCount,
                Evidence.OfFaultText,
                Evidence.OfEvent,
                NameEvidence,
                ForeignEvidence,
                CompletionEvidence,
                RangeEvidence,
                StepEvidence,
                TrendEvidence,
                WordsEvidence,
                PlaceEvidence,
                MeaningEvidence {
    /**
     * Weighs a value in a role.
     *
     * @param trail what was seen of the value
     * @param role what it may be
     * @return the evidence; {@link Clue#NONE} if there is none either way
     */
    Clue weigh(Trail trail, Role role);

    /** Readings are numbers; states are words or codes; fault texts and events are words. */
    record OfKind() implements Evidence {
        private static final double NEVER = 100;
        private static final double SELDOM = 0.5;

        @Override
        public Clue weigh(Trail trail, Role role) {
            if (role == Role.STATE && trail.isCode()) {
                return Clue.against(SELDOM);
            }
            return trail.numeric() == role.quantity().isPresent() ? Clue.NONE : Clue.against(NEVER);
        }
    }

    /** The unit given with a number. */
    record OfUnit() implements Evidence {
        @Override
        public Clue weigh(Trail trail, Role role) {
            if (trail.unit() == Unit.OWN || role.quantity().isEmpty()) {
                return Clue.NONE;
            }
            return trail.unit().goesWith(role.quantity().get())
                    ? new Clue(1.5, "is reported in " + trail.unit().word())
                    : Clue.against(6);
        }
    }

    /** The time left falls, and the time since the beginning rises, as fast as time passes, in one unit or another. */
    record OfPace() implements Evidence {
        private static final double USUAL = 2;

        /** A clock that stays at 0 until the job begins counts neither messages nor the time since the printer was switched on. */
        private static final double WAITS = 2.5;

        @Override
        public Clue weigh(Trail trail, Role role) {
            if (!trail.numeric() || (role != Role.LEFT && role != Role.ELAPSED)) {
                return Clue.NONE;
            }
            return UnitGuess.pace(trail, role)
                    .map(unit -> new Clue(
                            role == Role.ELAPSED && trail.startsAtNothing() ? WAITS : USUAL,
                            "goes " + (role == Role.LEFT ? "down" : "up") + " with time, in "
                                    + (unit.word().isEmpty() ? "s" : unit.word())))
                    .orElse(Clue.NONE);
        }
    }

    /** Layers are counted in whole numbers. */
    record OfCount() implements Evidence {
        @Override
        public Clue weigh(Trail trail, Role role) {
            boolean counts = role == Role.DONE || role == Role.TOTAL;
            return counts && trail.numeric() && !trail.whole() ? Clue.against(4) : Clue.NONE;
        }
    }

    /** A fault's text is empty for most of the time, or a few words that are not states. */
    record OfFaultText() implements Evidence {
        @Override
        public Clue weigh(Trail trail, Role role) {
            if (role != Role.FAULT_TEXT || trail.numeric()) {
                return Clue.NONE;
            }
            boolean empty = trail.words().stream().anyMatch(word -> word.isBlank() || word.equals("null"));
            boolean sentence =
                    trail.words().stream().anyMatch(word -> word.strip().contains(" "));
            boolean truth = trail.words().stream().anyMatch(word -> word.equals("true") || word.equals("false"));
            double weight = (empty ? 1.5 : 0) + (sentence ? 1 : 0) - (truth ? 6 : 0);
            return new Clue(weight, sentence ? "has text of several words" : "");
        }
    }

    /** An event is reported in words for its beginning and end, which come and go. */
    record OfEvent() implements Evidence {
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
}
