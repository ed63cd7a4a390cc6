package dev.lampwright.tool.picture;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** A moving picture as a file (GIF89a) that loops. For each picture, only the rectangle that differs from the previous one is stored. */
final class GifFile {
    private static final String FORMAT = "javax_imageio_gif_image_1.0";
    private static final byte[] FOR_EVER = {1, 0, 0};

    static {
        Paper.needNoScreen();
    }

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes);
    private final ImageWriter writer =
            ImageIO.getImageWritersByFormatName("gif").next();
    private BufferedImage before;
    private Part waiting;
    private boolean begun;

    /** A picture waiting to be written, because the next one may be identical. */
    private static final class Part {
        private final BufferedImage image;
        private final int x;
        private final int y;
        private int hundredths;

        Part(BufferedImage image, int x, int y, int hundredths) {
            this.image = image;
            this.x = x;
            this.y = y;
            this.hundredths = hundredths;
        }
    }

    /** Starts a file. */
    GifFile() {
        writer.setOutput(out);
        try {
            writer.prepareWriteSequence(null);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Adds a picture.
     *
     * @param image of the same size as the previous ones; kept
     * @param hundredths how long it is shown, in 1/100 s
     */
    void add(BufferedImage image, int hundredths) {
        int[] box = before == null ? new int[] {0, 0, image.getWidth(), image.getHeight()} : difference(before, image);
        before = image;
        if (box.length == 0) {
            waiting.hundredths += hundredths;
            return;
        }
        writeWaiting();
        waiting = new Part(image.getSubimage(box[0], box[1], box[2], box[3]), box[0], box[1], hundredths);
    }

    /**
     * Ends the file.
     *
     * @return its bytes
     */
    byte[] end() {
        writeWaiting();
        try {
            writer.endWriteSequence();
            out.flush();
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
    }

    private void writeWaiting() {
        if (waiting == null) {
            return;
        }
        BufferedImage indexed = Palette.indexed(waiting.image);
        try {
            writer.writeToSequence(new IIOImage(indexed, null, metadata(indexed)), null);
            begun = true;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private IIOMetadata metadata(BufferedImage indexed) throws IIOInvalidTreeException {
        IIOMetadata metadata =
                writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(indexed), null);
        IIOMetadataNode root = (IIOMetadataNode) metadata.getAsTree(FORMAT);
        IIOMetadataNode place = child(root, "ImageDescriptor");
        place.setAttribute("imageLeftPosition", Integer.toString(waiting.x));
        place.setAttribute("imageTopPosition", Integer.toString(waiting.y));
        place.setAttribute("interlaceFlag", "FALSE");
        IIOMetadataNode control = child(root, "GraphicControlExtension");
        control.setAttribute("disposalMethod", "doNotDispose");
        control.setAttribute("userInputFlag", "FALSE");
        control.setAttribute("transparentColorFlag", "FALSE");
        control.setAttribute("transparentColorIndex", "0");
        control.setAttribute("delayTime", Integer.toString(waiting.hundredths));
        root.appendChild(colours((IndexColorModel) indexed.getColorModel()));
        if (!begun) {
            child(root, "ApplicationExtensions").appendChild(loop());
        }
        metadata.setFromTree(FORMAT, root);
        return metadata;
    }

    /** A colour table for this picture only. */
    private static IIOMetadataNode colours(IndexColorModel model) {
        int size = Math.max(2, Integer.highestOneBit(2 * model.getMapSize() - 1));
        IIOMetadataNode table = new IIOMetadataNode("LocalColorTable");
        table.setAttribute("sizeOfLocalColorTable", Integer.toString(size));
        table.setAttribute("sortFlag", "FALSE");
        for (int i = 0; i < size; i++) {
            int tone = i < model.getMapSize() ? model.getRGB(i) : 0;
            IIOMetadataNode entry = new IIOMetadataNode("ColorTableEntry");
            entry.setAttribute("index", Integer.toString(i));
            entry.setAttribute("red", Integer.toString(tone >> 16 & 0xFF));
            entry.setAttribute("green", Integer.toString(tone >> 8 & 0xFF));
            entry.setAttribute("blue", Integer.toString(tone & 0xFF));
            table.appendChild(entry);
        }
        return table;
    }

    private static IIOMetadataNode loop() {
        IIOMetadataNode loop = new IIOMetadataNode("ApplicationExtension");
        loop.setAttribute("applicationID", "NETSCAPE");
        loop.setAttribute("authenticationCode", "2.0");
        loop.setUserObject(FOR_EVER);
        return loop;
    }

    private static IIOMetadataNode child(IIOMetadataNode root, String name) {
        if (root.getElementsByTagName(name).getLength() == 0) {
            root.appendChild(new IIOMetadataNode(name));
        }
        return (IIOMetadataNode) root.getElementsByTagName(name).item(0);
    }

    /**
     * The smallest rectangle that contains all differences.
     *
     * @return x, y, width and height; empty if the pictures are the same
     */
    static int[] difference(BufferedImage one, BufferedImage other) {
        int left = one.getWidth();
        int top = one.getHeight();
        int right = -1;
        int bottom = -1;
        for (int y = 0; y < one.getHeight(); y++) {
            for (int x = 0; x < one.getWidth(); x++) {
                if (one.getRGB(x, y) != other.getRGB(x, y)) {
                    left = Math.min(left, x);
                    right = Math.max(right, x);
                    top = Math.min(top, y);
                    bottom = y;
                }
            }
        }
        return right < 0 ? new int[0] : new int[] {left, top, right - left + 1, bottom - top + 1};
    }
}
