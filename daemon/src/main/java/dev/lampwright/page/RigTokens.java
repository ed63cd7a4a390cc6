package dev.lampwright.page;

import dev.lampwright.config.TokenFiles;
import dev.lampwright.http.RetriedServer;
import dev.lampwright.upkeep.RigName;
import dev.lampwright.upkeep.Trouble;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The tokens of one rig, as its files have them. While a file is not valid, none of them opens anything: the log says why, and it is read
 * again every few seconds. For one thread.
 */
final class RigTokens {
    private static final Logger LOG = LoggerFactory.getLogger(RigTokens.class);
    private static final long PAUSE_NANOS = TimeUnit.SECONDS.toNanos(RetriedServer.PAUSE_S);

    private final String rig;
    private final Trouble trouble = new Trouble(LOG);
    private TokenFiles files = TokenFiles.NONE;
    private PageTokens tokens = PageTokens.NONE;
    private long readNanos;

    /**
     * Makes one that has none.
     *
     * @param rig whose
     */
    RigTokens(String rig) {
        this.rig = rig;
    }

    /** Where they are. */
    TokenFiles files() {
        return files;
    }

    /** The tokens that open the rig's page now. */
    PageTokens tokens() {
        return tokens;
    }

    /**
     * Reads the files if they are others, if one was not right some time ago, or if asked to.
     *
     * @param now the files that count
     * @param again whether to read them in any case
     * @param nanos the time
     * @return whether other files or other tokens count from now on
     */
    boolean follow(TokenFiles now, boolean again, long nanos) {
        boolean due = trouble.isOn() && nanos - readNanos >= PAUSE_NANOS;
        if (!again && !due && now.equals(files)) {
            return false;
        }
        boolean moved = !now.equals(files);
        files = now;
        readNanos = nanos;
        PageTokens before = tokens;
        RigName.during(rig, () -> tokens = read(nanos));
        return moved || !tokens.sameAs(before);
    }

    private PageTokens read(long nanos) {
        try {
            PageTokens read = PageTokens.read(files);
            trouble.ends("the files with the rig's own tokens are right again");
            return read;
        } catch (IOException e) {
            trouble.begins("only the tokens of shop.toml open this rig's page: " + e.getMessage(), nanos);
            return PageTokens.NONE;
        }
    }
}
