package dev.lampwright.signal;

/** The highest of several tracks that is known. */
final class Highest implements Track {
    private final Track[] tracks;

    Highest(Track... tracks) {
        this.tracks = tracks;
    }

    @Override
    public double at(long nanos) {
        double highest = Double.NaN;
        for (Track track : tracks) {
            double value = track.at(nanos);
            if (value > highest || Double.isNaN(highest)) {
                highest = value;
            }
        }
        return highest;
    }
}
