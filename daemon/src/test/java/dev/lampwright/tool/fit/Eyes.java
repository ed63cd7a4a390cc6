package dev.lampwright.tool.fit;

import java.util.List;

/** What somebody in front of the strip sees, and reads on a meter. */
interface Eyes {
    /** All pixels of the strip, the one nearest the controller first. */
    List<StripModel.Pixel> pixels();

    /** The direction in which the light moves: above 0 away from the controller, below 0 towards it. */
    int drift();

    /** The index of the dimmer that is on, or −1. */
    int dimmer();

    /** What the meter in the strip's wire shows, in mA. */
    double meter();
}
