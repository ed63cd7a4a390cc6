package dev.lampwright.tool.plan;

import java.util.Arrays;

/**
 * How wide text is in the picture: the advance widths of DejaVu Sans, which Verdana matches almost exactly; other sans-serif fonts are
 * narrower. Characters outside ASCII count as the widest common one.
 */
final class TextWidth {
    private static final int FIRST = ' ';
    private static final double OTHER = 1000;
    private static final double EM = 1000;
    private static final String MORE = "…";

    /** In thousandths of the font's size, from the space to the tilde. */
    private static final int[] PLAIN = numbers(
            "318 401 460 838 636 950 780 275 390 390 500 838 318 361 318 337 636 636 636 636 636 636 636 636 636 636"
                    + " 337 337 838 838 838 531 1000 684 686 698 770 632 575 775 752 295 295 656 557 863 748 787 603 787 695 635 611 732 684"
                    + " 989 685 611 685 390 337 390 838 500 500 613 635 550 635 615 352 635 634 278 278 579 278 974 634 612 635 635 411 521"
                    + " 392 634 592 818 592 592 525 636 337 636 838");

    private static final int[] BOLD = numbers(
            "348 456 521 838 696 1002 872 306 457 457 523 838 380 415 380 365 696 696 696 696 696 696 696 696 696 696"
                    + " 400 400 838 838 838 580 1000 774 762 734 830 683 683 821 837 372 372 775 637 995 837 850 733 850 770 720 682 812 774"
                    + " 1103 771 724 725 457 365 457 838 500 500 675 716 593 716 678 435 716 712 343 343 665 343 1042 712 687 716 716 493 595"
                    + " 478 712 652 924 645 652 582 712 365 712 838");

    private TextWidth() {}

    private static int[] numbers(String words) {
        return Arrays.stream(words.split(" ")).mapToInt(Integer::parseInt).toArray();
    }

    /**
     * Width of a line.
     *
     * @param text the line
     * @param size of the font, in px
     * @param bold whether it is bold
     * @return px
     */
    static double of(String text, double size, boolean bold) {
        int[] widths = bold ? BOLD : PLAIN;
        return text.codePoints()
                        .mapToDouble(c -> c >= FIRST && c - FIRST < widths.length ? widths[c - FIRST] : OTHER)
                        .sum()
                * size
                / EM;
    }

    /**
     * A line that fits.
     *
     * @param text the line
     * @param size of the font, in px
     * @param bold whether it is bold
     * @param width available width, in px
     * @return the line, or as much of it as fits, with an ellipsis
     */
    static String fitted(String text, double size, boolean bold, double width) {
        if (of(text, size, bold) <= width) {
            return text;
        }
        int[] letters = text.codePoints().toArray();
        for (int count = letters.length - 1; count > 0; count--) {
            String less = new String(letters, 0, count).stripTrailing() + MORE;
            if (of(less, size, bold) <= width) {
                return less;
            }
        }
        return MORE;
    }
}
