package dev.lampwright.link;

import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.LastReset;
import java.util.Optional;

/**
 * What there is to tell of the link at one moment. Counts run since the link was started, but for the controller's own.
 *
 * @param state how far the link has come
 * @param port name of the line
 * @param controller what the controller said of itself when it was last asked; empty before its first answer
 * @param framesSent frames sent whole
 * @param framesShown frames that the controller said it shows
 * @param framesSkipped frames replaced by a newer one before there was credit for them
 * @param messagesLost messages that were never answered
 * @param refused messages that the controller refused
 * @param garbled broken packets heard from the controller
 * @param broken the controller's own count of broken packets, modulo 65536
 * @param overruns the controller's own count of overruns, modulo 65536
 * @param dimmed the controller's own count of frames dimmed to keep the ceiling, modulo 65536
 * @param trouble what is wrong now, in words; empty if nothing is
 */
public record LinkStatus(
        LinkState state,
        String port,
        Optional<Here> controller,
        long framesSent,
        long framesShown,
        long framesSkipped,
        long messagesLost,
        long refused,
        long garbled,
        int broken,
        int overruns,
        int dimmed,
        String trouble) {
    /**
     * What made the controller start last.
     *
     * @return empty if it does not say, or has not been heard
     */
    public Optional<LastReset> lastReset() {
        return controller.map(Here::lastReset).filter(cause -> cause != LastReset.UNKNOWN);
    }
}
