package trayward.host.store;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** Pictures, good and bad, for tests. */
public final class PictureScenes {

  private PictureScenes() {}

  /** Left half of one brightness, right half of another. */
  static BufferedImage halves(int width, int height, int type, int left, int right) {
    BufferedImage image = new BufferedImage(width, height, type);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int v = x < width / 2 ? left : right;
        if (type == BufferedImage.TYPE_BYTE_GRAY) {
          image.getRaster().setSample(x, y, 0, v);
        } else {
          image.setRGB(x, y, 0xFF000000 | (v << 16) | (v << 8) | v);
        }
      }
    }
    return image;
  }

  /** A file of it. */
  public static byte[] file(BufferedImage image, String format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, format, out);
    return out.toByteArray();
  }

  /** An ordinary JPEG. */
  public static byte[] jpeg(int width, int height) throws IOException {
    return file(halves(width, height, BufferedImage.TYPE_INT_RGB, 200, 40), "jpeg");
  }

  static byte[] progressiveJpeg(int width, int height) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ImageWriteParam param = writer.getDefaultWriteParam();
    param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
      writer.setOutput(stream);
      BufferedImage image = halves(width, height, BufferedImage.TYPE_BYTE_GRAY, 200, 40);
      writer.write(null, new IIOImage(image, null, null), param);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }

  /** A PNG of one chunk more, which stands after the header. */
  static byte[] withChunk(byte[] png, String type, byte[] data) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(png, 0, 33);
    out.write(chunk(type, data));
    out.write(png, 33, png.length - 33);
    return out.toByteArray();
  }

  /** A JPEG of one application segment more, as cameras put one in. */
  static byte[] withSegment(byte[] jpeg, int marker, byte[] data) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    DataOutputStream segment = new DataOutputStream(out);
    segment.write(jpeg, 0, 2);
    segment.writeShort(0xFF00 | marker);
    segment.writeShort(data.length + 2);
    segment.write(data);
    segment.write(jpeg, 2, jpeg.length - 2);
    return out.toByteArray();
  }

  /** A PNG in grey that says it is so large; its pixels are one bit each and all black. */
  public static byte[] claiming(int width, int height, long rowsPacked) throws IOException {
    ByteArrayOutputStream head = new ByteArrayOutputStream();
    DataOutputStream header = new DataOutputStream(head);
    header.writeInt(width);
    header.writeInt(height);
    header.write(new byte[] {1, 0, 0, 0, 0});
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10});
    out.write(chunk("IHDR", head.toByteArray()));
    out.write(chunk("IDAT", zeros(rowsPacked * (1 + (width + 7) / 8))));
    out.write(chunk("IEND", new byte[0]));
    return out.toByteArray();
  }

  /** So many zeros, deflated. */
  static byte[] zeros(long count) {
    Deflater deflater = new Deflater(9);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] some = new byte[1 << 16];
    byte[] packed = new byte[1 << 16];
    long left = count;
    while (!deflater.finished()) {
      if (deflater.needsInput()) {
        int n = (int) Math.min(left, some.length);
        deflater.setInput(some, 0, n);
        left -= n;
        if (left == 0) {
          deflater.finish();
        }
      }
      out.write(packed, 0, deflater.deflate(packed));
    }
    deflater.end();
    return out.toByteArray();
  }

  private static byte[] chunk(String type, byte[] data) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    DataOutputStream chunk = new DataOutputStream(out);
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 crc = new CRC32();
    crc.update(name);
    crc.update(data);
    chunk.writeInt(data.length);
    chunk.write(name);
    chunk.write(data);
    chunk.writeInt((int) crc.getValue());
    return out.toByteArray();
  }
}
