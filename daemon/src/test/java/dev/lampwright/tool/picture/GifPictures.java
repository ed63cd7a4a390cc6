package dev.lampwright.tool.picture;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageInputStream;

/** Reads a moving picture with the Java library's own reader. */
final class GifPictures {
    private static final String FORMAT = "javax_imageio_gif_image_1.0";

    private GifPictures() {}

    /** Each picture as seen, drawn over the previous ones. */
    static List<BufferedImage> of(byte[] gif) throws IOException {
        List<BufferedImage> pictures = new ArrayList<>();
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(gif))) {
            ImageReader reader = reader(in);
            for (int i = 0; i < reader.getNumImages(true); i++) {
                BufferedImage part = reader.read(i);
                IIOMetadataNode place = node(reader, i, "ImageDescriptor");
                BufferedImage whole = i == 0
                        ? new BufferedImage(part.getWidth(), part.getHeight(), BufferedImage.TYPE_INT_RGB)
                        : copy(pictures.get(i - 1));
                Graphics2D graphics = whole.createGraphics();
                graphics.drawImage(part, number(place, "imageLeftPosition"), number(place, "imageTopPosition"), null);
                graphics.dispose();
                pictures.add(whole);
            }
        }
        return pictures;
    }

    /** How long each is shown. */
    static List<Integer> hundredths(byte[] gif) throws IOException {
        List<Integer> hundredths = new ArrayList<>();
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(gif))) {
            ImageReader reader = reader(in);
            for (int i = 0; i < reader.getNumImages(true); i++) {
                hundredths.add(number(node(reader, i, "GraphicControlExtension"), "delayTime"));
            }
        }
        return hundredths;
    }

    private static ImageReader reader(ImageInputStream in) {
        ImageReader reader = ImageIO.getImageReadersByFormatName("gif").next();
        reader.setInput(in);
        return reader;
    }

    private static IIOMetadataNode node(ImageReader reader, int picture, String name) throws IOException {
        IIOMetadataNode root =
                (IIOMetadataNode) reader.getImageMetadata(picture).getAsTree(FORMAT);
        return (IIOMetadataNode) root.getElementsByTagName(name).item(0);
    }

    private static int number(IIOMetadataNode node, String attribute) {
        return Integer.parseInt(node.getAttribute(attribute));
    }

    private static BufferedImage copy(BufferedImage image) {
        BufferedImage copy = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
        copy.setData(image.getData());
        return copy;
    }
}
