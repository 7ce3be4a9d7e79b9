package trayward.host.store;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;

/** The segments of a JPEG file that make the image: ITU-T T.81, annex B. One use, one thread. */
final class JpegCore {

  /** First two bytes: start of image. */
  static final int START = 0xFFD8;

  /**
   * Most scans: a progressive picture has about ten. Each is a pass over the whole picture, so a
   * file of nothing but scans would keep a decoder busy for hours.
   */
  private static final int SCANS_MAX = 64;

  /** Most pixels where a decoder must hold the whole picture: 16 million are 100 MB. */
  private static final long HELD_PIXELS_MAX = 16_000_000;

  private static final int SOF0 = 0xC0;
  private static final int SOF1 = 0xC1;
  private static final int SOF2 = 0xC2;
  private static final int DHT = 0xC4;
  private static final int DAC = 0xCC;
  private static final int RST0 = 0xD0;
  private static final int RST7 = 0xD7;
  private static final int EOI = 0xD9;
  private static final int SOS = 0xDA;
  private static final int DQT = 0xDB;
  private static final int DRI = 0xDD;
  private static final int APP0 = 0xE0;
  private static final int APP14 = 0xEE; // says how colours are told

  private final DataInputStream in;
  private final ByteArrayOutputStream core = new ByteArrayOutputStream();
  private final DataOutputStream out = new DataOutputStream(core);
  private int width;
  private int height;
  private int components;
  private boolean held;
  private int scans;

  private JpegCore(DataInputStream in) {
    this.in = in;
  }

  /** Reads what follows the first two bytes, up to the end of the image. */
  static PictureCore read(DataInputStream in) throws IOException, NoPicture {
    return new JpegCore(in).read();
  }

  private PictureCore read() throws IOException, NoPicture {
    out.writeShort(START);
    int marker = marker(in.readUnsignedByte());
    // Ends with the file at the latest: each turn reads two bytes or more.
    while (marker != EOI) {
      byte[] data = in.readNBytes(Math.max(0, in.readUnsignedShort() - 2));
      look(marker, data);
      if (kept(marker)) {
        out.writeShort(0xFF00 | marker);
        out.writeShort(data.length + 2);
        out.write(data);
      }
      marker = marker == SOS ? copyScan() : marker(in.readUnsignedByte());
    }
    out.writeShort(0xFF00 | EOI);
    if (width == 0 || scans == 0) {
      throw new NoPicture("it has no image in it");
    }
    return new PictureCore("image/jpeg", width, height, core.toByteArray());
  }

  /** A marker; any number of fill bytes may stand before it. */
  private int marker(int first) throws IOException, NoPicture {
    if (first != 0xFF) {
      throw new NoPicture("its segments do not hang together");
    }
    int code = in.readUnsignedByte();
    while (code == 0xFF) {
      code = in.readUnsignedByte();
    }
    return code;
  }

  private static boolean kept(int marker) {
    return switch (marker) {
      case SOF0, SOF1, SOF2, DHT, DQT, DRI, SOS, APP0, APP14 -> true;
      default -> false;
    };
  }

  private void look(int marker, byte[] data) throws NoPicture {
    if (marker >= SOF0 && marker <= 0xCF && marker != DHT && marker != 0xC8 && marker != DAC) {
      frame(marker, data);
    } else if (marker == SOS) {
      scans++;
      held |= data.length > 0 && data[0] < components;
      if (width == 0 || scans > SCANS_MAX) {
        throw new NoPicture(width == 0 ? "it has no size" : "it is told in too many scans");
      }
      if (held && (long) width * height > HELD_PIXELS_MAX) {
        throw new NoPicture(
            "of a progressive JPEG at most 16 million pixels are taken; store it as a plain one");
      }
    }
  }

  private void frame(int marker, byte[] data) throws NoPicture {
    if (marker > SOF2 || data.length < 6 || width != 0) {
      throw new NoPicture("it is of a sort of JPEG that is not taken");
    }
    height = ((data[1] & 0xFF) << 8) | (data[2] & 0xFF);
    width = ((data[3] & 0xFF) << 8) | (data[4] & 0xFF);
    components = data[5];
    held = marker == SOF2;
    PictureCore.checkSize(width, height);
  }

  /** Copies entropy-coded data up to the next marker that is not part of it; gives that marker. */
  private int copyScan() throws IOException, NoPicture {
    while (true) {
      int one = in.readUnsignedByte();
      if (one != 0xFF) {
        out.write(one);
        continue;
      }
      int code = marker(one);
      if (code != 0 && (code < RST0 || code > RST7)) {
        return code;
      }
      out.writeShort(0xFF00 | code);
    }
  }
}
