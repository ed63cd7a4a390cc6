package dev.lampwright.tool.plan;

/** How bad a verdict is, the worst first. */
public enum Severity {
    /** Outside of what something is rated for: this has to be changed. */
    OVER,
    /** Within the ratings, but with too little margin or against good practice. */
    CARE,
    /** Not judged, because something was not told; the verdict says what would be right. */
    OPEN,
    /** Good. */
    GOOD
}
