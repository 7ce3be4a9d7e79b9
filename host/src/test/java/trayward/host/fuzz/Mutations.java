package trayward.host.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Makes wrong input of good: one to eight changes of a document that is right, each a bit turned, a
 * piece gone, doubled, moved or replaced by something known to be awkward. The same seed makes the
 * same. One thread.
 */
public final class Mutations {

  /** Longest result: what doubles may not grow without end. */
  private static final int BYTES_MAX = 1 << 16;

  private static final int CHANGES_MAX = 8;

  /** What readers stumble over. */
  private static final List<String> AWKWARD =
      List.of(
          "",
          "\"",
          "'",
          "\n",
          "\r\n",
          "\0",
          "-1",
          "0",
          "-0.0",
          "1e999",
          "-1e999",
          "NaN",
          "nan",
          "inf",
          "-inf",
          "9223372036854775808",
          "2147483648",
          "65536",
          "0x7f",
          "1_000",
          "true",
          "[",
          "]",
          "[[",
          "{",
          "}",
          "=",
          ",",
          ".",
          "..",
          "/",
          "../",
          "\\",
          "\\u0000",
          "%00",
          "\"\"\"",
          "#",
          "é",
          "\ud83d\ude00",
          "\u202e",
          "[".repeat(3000),
          "{a=".repeat(1000),
          "a.".repeat(2000),
          "9".repeat(5000),
          "x".repeat(40_000));

  private final Random random;

  /** What this seed makes. */
  public Mutations(long seed) {
    random = new Random(seed);
  }

  /** For choices of the test itself. */
  public Random random() {
    return random;
  }

  /** Any of them. */
  public <T> T one(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  /** A text changed, read back as UTF-8 with whatever that makes of it. */
  public String text(String good) {
    return new String(bytes(good.getBytes(StandardCharsets.UTF_8)), StandardCharsets.UTF_8);
  }

  /** Bytes changed. */
  public byte[] bytes(byte[] good) {
    byte[] now = good;
    for (int i = 1 + random.nextInt(CHANGES_MAX); i > 0; i--) {
      now = changed(now);
    }
    return now;
  }

  private byte[] changed(byte[] from) {
    int at = random.nextInt(from.length + 1);
    int to = Math.min(from.length, at + random.nextInt(24));
    return switch (random.nextInt(6)) {
      case 0 -> turned(from, at);
      case 1 -> joined(from, 0, at, new byte[0], from, to);
      case 2 -> joined(from, 0, to, new byte[0], from, at);
      case 3 -> joined(from, 0, at, piece(from), from, to);
      case 4 -> joined(from, 0, at, one(AWKWARD).getBytes(StandardCharsets.UTF_8), from, to);
      default -> joined(from, 0, at, one(AWKWARD).getBytes(StandardCharsets.UTF_8), from, at);
    };
  }

  private byte[] turned(byte[] from, int at) {
    byte[] turned = from.clone();
    if (at < turned.length) {
      turned[at] ^= (byte) (1 << random.nextInt(8));
    }
    return turned;
  }

  private byte[] piece(byte[] of) {
    int at = random.nextInt(of.length + 1);
    int to = Math.min(of.length, at + random.nextInt(60));
    return Arrays.copyOfRange(of, at, to);
  }

  private static byte[] joined(byte[] a, int from, int to, byte[] middle, byte[] b, int on) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(a, from, to - from);
    out.writeBytes(middle);
    out.write(b, on, b.length - on);
    byte[] all = out.toByteArray();
    return all.length <= BYTES_MAX ? all : Arrays.copyOf(all, BYTES_MAX);
  }
}
