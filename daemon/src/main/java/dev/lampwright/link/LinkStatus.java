package dev.lampwright.link;

import dev.lampwright.phrase.Phrase;
import dev.lampwright.protocol.Here;
import dev.lampwright.protocol.LastReset;
import java.util.Optional;

/**
 * The status of the link at one moment. Counts are since the link was started, except for the controller's own.
 *
 * @param state how far the link has come
 * @param port name of the line
 * @param controller what the controller last reported about itself; empty before its first answer
 * @param framesSent frames sent completely
 * @param framesShown frames that the controller reported as shown
 * @param framesSkipped frames replaced by a newer one before there was credit for them
 * @param messagesLost messages that were never answered
 * @param refused messages that the controller refused
 * @param garbled broken packets received from the controller
 * @param broken the controller's own count of broken packets, modulo 65536
 * @param overruns the controller's own count of overruns, modulo 65536
 * @param dimmed the controller's own count of frames dimmed to keep the ceiling, modulo 65536
 * @param trouble what is wrong now, in words; empty if nothing is
 * @param cause the same with its code, if it has one
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
        String trouble,
        Phrase cause) {
    /**
     * The cause of the controller's last start.
     *
     * @return empty if not reported, or if no controller has answered
     */
    public Optional<LastReset> lastReset() {
        return controller.map(Here::lastReset).filter(cause -> cause != LastReset.UNKNOWN);
    }
}
