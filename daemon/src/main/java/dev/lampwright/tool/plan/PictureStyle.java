package dev.lampwright.tool.plan;

/** The colours and sizes of the picture. */
final class PictureStyle {
    static final String TEXT = "#1a1a1a";
    static final String FAINT = "#666666";
    static final String GRID = "#dddddd";
    static final String PLUS = "#c62828";
    static final String MINUS = "#111111";
    static final String DATA = "#1565c0";
    static final String GOOD = "#2e7d32";
    static final String CARE = "#b26a00";
    static final String OVER = "#b71c1c";
    static final String OPEN = "#455a64";
    static final String SUPPLY = "#fff3e0";
    static final String BOARD = "#e3f2fd";
    static final String LIGHT = "#fffde7";
    static final String FUSE = "#ffffff";
    static final String CAUTION = "#fff8e1";
    static final double SMALL = 12;
    static final double NORMAL = 13;
    static final double LARGE = 16;
    static final double WIRE = 3;
    /** Width of the picture. */
    static final double PAGE = 1500;
    /** The margin on all sides. */
    static final double MARGIN = 40;

    private PictureStyle() {}

    /** The colour of a level. */
    static String of(Verdict.Severity level) {
        return switch (level) {
            case OVER -> OVER;
            case CARE -> CARE;
            case OPEN -> OPEN;
            case GOOD -> GOOD;
        };
    }
}
