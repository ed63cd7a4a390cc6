package dev.lampwright.http;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.UnixOperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import org.junit.jupiter.api.Test;

class PortProbeTest {
    private static final int ATTEMPTS = 500;

    private static InetSocketAddress loopback(int port) {
        return new InetSocketAddress(InetAddress.getLoopbackAddress(), port);
    }

    @Test
    void whatIsTakenCannotBeHadAndLeavesNothingBehind() throws IOException {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            InetSocketAddress where = loopback(taken.getLocalPort());
            long before = descriptors();
            for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
                assertThrows(BindException.class, () -> PortProbe.require(where));
            }
            long more = descriptors() - before;
            assertTrue(more < ATTEMPTS / 5, more + " descriptors after " + ATTEMPTS + " attempts");
        }
    }

    /** Of this process; its other threads may open some meanwhile. */
    private static long descriptors() {
        return ManagementFactory.getPlatformMXBean(UnixOperatingSystemMXBean.class)
                .getOpenFileDescriptorCount();
    }

    @Test
    void whatIsFreeCanBeHadAfterwards() throws IOException {
        ServerSocket first = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
        InetSocketAddress where = loopback(first.getLocalPort());
        first.close();
        PortProbe.require(where);
        try (ServerSocket second = new ServerSocket()) {
            second.bind(where);
            assertTrue(second.isBound());
        }
    }
}
