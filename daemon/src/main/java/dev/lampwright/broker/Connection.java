package dev.lampwright.broker;

/** What a daemon has of its broker: it hears what it subscribed to, and publishes. */
public interface Connection extends AutoCloseable {
    /** Starts to connect, and returns at once. To be called once. */
    void start();

    /**
     * Whether it is looked after.
     *
     * @return false before {@link #start} and after {@link #close}
     */
    boolean isAlive();

    /**
     * Publishes soon, and returns at once; callable from any thread. While there is no connection, messages wait for the next. Of
     * retained messages only the newest of a topic is published, and it is published again after each new connection. Of the others
     * each is published once, in their order. The oldest are dropped if more than 64 wait. After {@link #close} nothing is taken.
     *
     * @param topic where, 1 to 65535 bytes of UTF-8 without wildcards
     * @param payload what; it is copied
     * @param retained whether the broker is to keep it for those who subscribe later
     * @throws IllegalArgumentException if MQTT does not allow the topic; the message says why
     */
    void publish(String topic, byte[] payload, boolean retained);

    /**
     * How things stand.
     *
     * @return the newest
     */
    BrokerState state();

    /**
     * How many messages have come.
     *
     * @return a count since the start
     */
    long messages();

    /**
     * Publishes what still waits and the will's goodbye, if the broker takes it, and ends. It takes 1.5 s at most, whatever the broker
     * does. After this no message is passed on.
     */
    @Override
    void close();
}
