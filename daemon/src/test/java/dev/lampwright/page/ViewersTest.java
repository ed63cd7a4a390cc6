package dev.lampwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class ViewersTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final Viewers viewers = new Viewers();
    private final Viewer viewer = new Viewer(out);

    @Test
    void everybodyIsSentAwayWhenThePageCloses() throws IOException {
        viewers.add(viewer);
        viewers.dismissAll();
        viewer.serve();
        assertEquals(0, out.size());
    }

    /** As when a token changes while somebody who has the old one is being let in. */
    @Test
    void whoeverIsLetInWhileThePageClosesIsSentAwayToo() throws IOException {
        viewers.dismissAll();
        viewers.add(viewer);
        viewer.serve();
        assertEquals(0, out.size());
    }
}
