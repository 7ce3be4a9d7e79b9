package trayward.host.store;

import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;

/** The chunks of a PNG file that make the image: PNG specification, third edition, 5 and 11. */
final class PngCore {

  /** First two bytes. */
  static final int START = 0x8950;

  private static final long SIGNATURE_REST = 0x4E470D0A1A0AL;
  private static final int IHDR = 0x49484452;
  private static final int PLTE = 0x504C5445;
  private static final int IDAT = 0x49444154;
  private static final int IEND = 0x49454E44;

  private PngCore() {}

  /** Reads what follows the first two bytes. */
  static PictureCore read(DataInputStream in) throws IOException, NoPicture {
    long rest = ((long) in.readUnsignedShort() << 32) | (in.readInt() & 0xFFFF_FFFFL);
    if (rest != SIGNATURE_REST) {
      throw new NoPicture("it is neither JPEG nor PNG");
    }
    ByteArrayOutputStream core = new ByteArrayOutputStream();
    DataOutputStream out = new DataOutputStream(core);
    out.writeShort(START);
    out.writeShort((int) (SIGNATURE_REST >> 32));
    out.writeInt((int) SIGNATURE_REST);
    int width = 0;
    int height = 0;
    int type = 0;
    // Ends with the file at the latest: each turn reads twelve bytes or more.
    while (type != IEND) {
      int length = in.readInt();
      boolean head = type == 0;
      type = in.readInt();
      if (length < 0 || length > Pictures.BYTES_MAX || head != (type == IHDR)) {
        throw new NoPicture("its chunks stand in no order");
      }
      if (type == IHDR || type == PLTE || type == IDAT || type == IEND) {
        byte[] data = in.readNBytes(length);
        if (data.length < length) {
          throw new NoPicture(PictureCore.CUT_SHORT);
        }
        if (type == IHDR) {
          width = side(data, 0);
          height = side(data, 4);
          PictureCore.checkSize(width & 0xFFFF_FFFFL, height & 0xFFFF_FFFFL);
        }
        out.writeInt(length);
        out.writeInt(type);
        out.write(data);
        out.writeInt(in.readInt());
      } else {
        in.skipNBytes(length + 4L);
      }
    }
    return new PictureCore("image/png", width, height, core.toByteArray());
  }

  private static int side(byte[] data, int at) throws NoPicture {
    if (data.length != 13) {
      throw new NoPicture("its header is no PNG header");
    }
    return ((data[at] & 0xFF) << 24)
        | ((data[at + 1] & 0xFF) << 16)
        | ((data[at + 2] & 0xFF) << 8)
        | (data[at + 3] & 0xFF);
  }
}
