package dev.lampwright.service;

import com.sun.jna.LastErrorException;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * A datagram socket of the family {@code AF_UNIX}, for which Java 17 has no class. Numbers are those of Linux, by the kernel's
 * {@code include/linux/socket.h} and {@code include/linux/net.h} (from memory); they are the same on x86, ARM and RISC-V.
 */
final class UnixDatagrams implements Datagrams {
    private static final short AF_UNIX = 1;
    private static final int SOCK_DGRAM = 2;
    private static final int SOCK_CLOEXEC = 0x80000;
    private static final int MSG_DONTWAIT = 0x40;
    private static final int MSG_NOSIGNAL = 0x4000;

    /** {@code sun_path} of unix(7), including the byte that ends a path in it. */
    private static final int LONGEST_PATH = 107;

    private final byte[] address;
    private final int socket;

    private UnixDatagrams(byte[] address, int socket) {
        this.address = address;
        this.socket = socket;
    }

    /** Functions of the C library. Use only after {@link NativeHalf#load}. */
    static final class C {
        static {
            Native.register("c");
        }

        private C() {}

        static native int socket(int family, int type, int protocol) throws LastErrorException;

        static native NativeLong sendto(
                int socket, byte[] bytes, NativeLong count, int flags, byte[] address, int addressBytes)
                throws LastErrorException;

        static native int close(int descriptor) throws LastErrorException;
    }

    /**
     * Opens a socket.
     *
     * @param name path of the receiver's socket; a name in the abstract namespace starts with {@code @}
     * @return the socket
     * @throws IOException if the name is not valid, or the native half of JNA cannot be loaded
     */
    static UnixDatagrams to(String name) throws IOException {
        byte[] address = address(name);
        NativeHalf.load();
        try {
            return new UnixDatagrams(address, C.socket(AF_UNIX, SOCK_DGRAM | SOCK_CLOEXEC, 0));
        } catch (LastErrorException | LinkageError e) {
            throw new IOException(name + " cannot be reached: " + e.getMessage(), e);
        }
    }

    /** A {@code sockaddr_un} of unix(7): the family in the machine's order, then the path, whose first byte is 0 if abstract. */
    static byte[] address(String name) throws IOException {
        byte[] path = name.getBytes(StandardCharsets.UTF_8);
        if (path.length < 2 || path.length > LONGEST_PATH || (path[0] != '/' && path[0] != '@')) {
            throw new IOException(name + " is not the name of a socket: it takes /path or @name, of 107 bytes at most");
        }
        if (path[0] == '@') {
            path[0] = 0;
        }
        return ByteBuffer.allocate(Short.BYTES + path.length)
                .order(ByteOrder.nativeOrder())
                .putShort(AF_UNIX)
                .put(path)
                .array();
    }

    @Override
    public void send(String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        try {
            C.sendto(socket, bytes, new NativeLong(bytes.length), MSG_DONTWAIT | MSG_NOSIGNAL, address, address.length);
        } catch (LastErrorException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    @Override
    public void close() {
        C.close(socket);
    }
}
