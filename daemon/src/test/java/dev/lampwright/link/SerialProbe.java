package dev.lampwright.link;

/** A separate process that opens a serial port and says in one line how that went. */
final class SerialProbe {
    private SerialProbe() {}

    public static void main(String[] arguments) {
        SerialLine line = new SerialLine(arguments[0], 115_200);
        try {
            line.open();
            System.out.println("open");
        } catch (LineException e) {
            System.out.println(e.getMessage());
        } finally {
            line.close();
        }
    }
}
