package trayward.host.store;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.MemoryCacheImageInputStream;

/** A small picture of a large one. Stateless; needs no display. */
final class Thumbnail {

  /** Longest side, pixels. */
  static final int SIDE = 320;

  /** A decoder leaves pixels out down to this many times the side; the rest is averaged. */
  private static final int FINER = 2;

  private Thumbnail() {}

  /** The bytes of a JPEG file of at most {@value #SIDE} pixels a side. */
  static byte[] of(PictureCore core) throws NoPicture {
    try {
      BufferedImage small = shrink(decode(core));
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      if (!ImageIO.write(small, "jpeg", out)) {
        throw new IllegalStateException("this Java writes no JPEG");
      }
      return out.toByteArray();
    } catch (IOException | IndexOutOfBoundsException | IllegalArgumentException e) {
      // What decoders throw for what is no picture.
      throw new NoPicture("it cannot be decoded");
    }
  }

  private static BufferedImage decode(PictureCore core) throws IOException, NoPicture {
    Iterator<ImageReader> readers = ImageIO.getImageReadersByMIMEType(core.type());
    if (!readers.hasNext()) {
      throw new IllegalStateException("this Java reads no " + core.type());
    }
    ImageReader reader = readers.next();
    try (MemoryCacheImageInputStream in =
        new MemoryCacheImageInputStream(new ByteArrayInputStream(core.bytes()))) {
      reader.setInput(in, true, true);
      if (reader.getWidth(0) != core.width() || reader.getHeight(0) != core.height()) {
        throw new NoPicture("it tells two sizes");
      }
      int every = Math.max(1, Math.max(core.width(), core.height()) / (FINER * SIDE));
      ImageReadParam param = reader.getDefaultReadParam();
      param.setSourceSubsampling(
          Math.min(every, core.width()), Math.min(every, core.height()), 0, 0);
      return reader.read(0, param);
    } finally {
      reader.dispose();
    }
  }

  /** Each pixel is the mean of the block it stands for. */
  private static BufferedImage shrink(BufferedImage from) {
    double by = Math.max(1, Math.max(from.getWidth(), from.getHeight()) / (double) SIDE);
    int width = (int) Math.max(1, Math.round(from.getWidth() / by));
    int height = (int) Math.max(1, Math.round(from.getHeight() / by));
    BufferedImage to = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < height; y++) {
      int fromY = y * from.getHeight() / height;
      int toY = Math.max(fromY + 1, (y + 1) * from.getHeight() / height);
      for (int x = 0; x < width; x++) {
        int fromX = x * from.getWidth() / width;
        int toX = Math.max(fromX + 1, (x + 1) * from.getWidth() / width);
        to.setRGB(x, y, mean(from, fromX, toX, fromY, toY));
      }
    }
    return to;
  }

  private static int mean(BufferedImage image, int fromX, int toX, int fromY, int toY) {
    int red = 0;
    int green = 0;
    int blue = 0;
    for (int y = fromY; y < toY; y++) {
      for (int x = fromX; x < toX; x++) {
        int rgb = overBlack(image, x, y);
        red += (rgb >> 16) & 0xFF;
        green += (rgb >> 8) & 0xFF;
        blue += rgb & 0xFF;
      }
    }
    int n = (toX - fromX) * (toY - fromY);
    return ((red / n) << 16) | ((green / n) << 8) | (blue / n);
  }

  private static int overBlack(BufferedImage image, int x, int y) {
    int bands = image.getRaster().getNumBands();
    if (bands <= 2 && !(image.getColorModel() instanceof IndexColorModel)) {
      // A grey sample is taken as it is: Java counts grey as linear and would brighten it.
      int bits = image.getSampleModel().getSampleSize(0);
      int sample = image.getRaster().getSample(x, y, 0);
      int grey = bits >= 8 ? sample >> (bits - 8) : sample * 0xFF / ((1 << bits) - 1);
      return (grey << 16) | (grey << 8) | grey;
    }
    int argb = image.getRGB(x, y);
    int alpha = argb >>> 24;
    return ((((argb >> 16) & 0xFF) * alpha / 0xFF) << 16)
        | ((((argb >> 8) & 0xFF) * alpha / 0xFF) << 8)
        | ((argb & 0xFF) * alpha / 0xFF);
  }
}
