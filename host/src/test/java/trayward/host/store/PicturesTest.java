package trayward.host.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static trayward.host.session.MarkKind.IN;
import static trayward.host.store.LogScenes.EVENING;
import static trayward.host.store.LogScenes.marked;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import trayward.host.bath.Checked;
import trayward.host.bath.Problem;
import trayward.host.session.PrintPicture;

class PicturesTest {

  @TempDir Path folder;
  private TrayLog log;

  @BeforeEach
  void open() throws LogRefused {
    log = LogFile.open(folder);
    marked(log, IN, log.startSession(EVENING, true), 10);
  }

  @AfterEach
  void close() {
    log.close();
  }

  private PrintPicture added(byte[] file) throws IOException {
    Checked<PrintPicture> checked = log.pictures().add(1, new ByteArrayInputStream(file), EVENING);
    if (checked instanceof Checked.Good<PrintPicture> good) {
      return good.value();
    }
    throw new AssertionError(checked);
  }

  private Problem refused(byte[] file) throws IOException {
    Checked<PrintPicture> checked = log.pictures().add(1, new ByteArrayInputStream(file), EVENING);
    assertEquals(List.of(), log.archive().entries(1).pictures());
    assertEquals(List.of(), files());
    return assertInstanceOf(Checked.Bad.class, checked).problem();
  }

  private void noPicture(byte[] file, String why) throws IOException {
    String found = refused(file).found();
    assertTrue(found.startsWith("no picture") && found.contains(why), found);
  }

  private List<String> files() throws IOException {
    try (Stream<Path> all = Files.list(folder.resolve("pictures"))) {
      return all.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  private BufferedImage small(PrintPicture picture) throws IOException {
    return ImageIO.read(log.archive().file(picture, true).toFile());
  }

  private static int grey(BufferedImage image, double x, double y) {
    return image.getRGB((int) (x * image.getWidth()), (int) (y * image.getHeight())) & 0xFF;
  }

  @Test
  void theOriginalIsKeptByteForByteWithASmallOneBesideItThroughARestart() throws Exception {
    byte[] file = PictureScenes.withSegment(PictureScenes.jpeg(1200, 800), 0xE1, new byte[500]);
    PrintPicture picture = added(file);
    log.close();
    log = LogFile.open(folder);
    assertEquals(Optional.of(picture), log.archive().picture(picture.id()));
    assertEquals(List.of(picture), log.archive().entries(1).pictures());
    assertEquals(
        List.of("image/jpeg", 1200, 800, (long) file.length),
        List.of(picture.type(), picture.width(), picture.height(), picture.bytes()));
    assertArrayEquals(file, Files.readAllBytes(log.archive().file(picture, false)));
    BufferedImage small = small(picture);
    assertEquals(List.of(320, 213), List.of(small.getWidth(), small.getHeight()));
    assertEquals(200, grey(small, 0.2, 0.5), 3);
    assertEquals(40, grey(small, 0.8, 0.5), 3);
  }

  @Test
  void greyPalettesTransparencyAndSixteenBitsKeepTheirBrightness() throws Exception {
    for (int type :
        new int[] {
          BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_INT_ARGB, BufferedImage.TYPE_INT_RGB
        }) {
      BufferedImage halves = PictureScenes.halves(90, 50, type, 128, 16);
      BufferedImage small = small(added(PictureScenes.file(halves, "png")));
      assertEquals(90, small.getWidth(), "a small one is not made larger");
      assertEquals(128, grey(small, 0.2, 0.5), 3);
      assertEquals(16, grey(small, 0.8, 0.5), 3);
    }
    BufferedImage deep = new BufferedImage(40, 40, BufferedImage.TYPE_USHORT_GRAY);
    for (int i = 0; i < 1600; i++) {
      deep.getRaster().setSample(i % 40, i / 40, 0, 0x8000);
    }
    assertEquals(128, grey(small(added(PictureScenes.file(deep, "png"))), 0.5, 0.5), 3);
    byte[] ramp = new byte[256];
    for (int i = 0; i < 256; i++) {
      ramp[i] = (byte) i;
    }
    IndexColorModel palette = new IndexColorModel(8, 256, ramp, ramp, ramp);
    BufferedImage indexed = new BufferedImage(40, 40, BufferedImage.TYPE_BYTE_INDEXED, palette);
    for (int i = 0; i < 1600; i++) {
      indexed.getRaster().setSample(i % 40, i / 40, 0, 77);
    }
    assertEquals(77, grey(small(added(PictureScenes.file(indexed, "png"))), 0.5, 0.5), 3);
    byte[] grey =
        PictureScenes.file(
            PictureScenes.halves(640, 64, BufferedImage.TYPE_BYTE_GRAY, 60, 60), "jpeg");
    assertEquals(60, grey(small(added(grey)), 0.5, 0.5), 3);
    assertEquals(200, grey(small(added(PictureScenes.progressiveJpeg(300, 200))), 0.2, 0.5), 3);
  }

  @Test
  void whatIsNoPictureIsRefusedAndLeavesNothing() throws Exception {
    byte[] jpeg = PictureScenes.jpeg(400, 300);
    byte[] png = PictureScenes.claiming(64, 64, 64);
    noPicture("a text, named as a JPEG".getBytes(StandardCharsets.UTF_8), "neither");
    noPicture("<svg onload='alert(1)'/>".getBytes(StandardCharsets.UTF_8), "neither");
    noPicture(new byte[0], "cut short");
    noPicture(new byte[] {(byte) 0xFF, (byte) 0xD8}, "cut short");
    for (int length : new int[] {3, 30, 300, jpeg.length / 2, jpeg.length - 1}) {
      noPicture(Arrays.copyOf(jpeg, length), "");
    }
    for (int length : new int[] {3, 20, 40, png.length - 1}) {
      noPicture(Arrays.copyOf(png, length), "cut short");
    }
    noPicture(PictureScenes.claiming(64, 64, 10), "decoded");
    byte[] gif = "GIF89a".getBytes(StandardCharsets.US_ASCII);
    noPicture(gif, "neither");
  }

  @Test
  void aFileGarbledAnywhereIsAPictureOrIsRefusedButNothingElse() throws Exception {
    java.util.Random dice = new java.util.Random(7);
    for (byte[] good :
        List.of(
            PictureScenes.jpeg(64, 48),
            PictureScenes.progressiveJpeg(64, 48),
            PictureScenes.claiming(64, 64, 64))) {
      for (int i = 0; i < 300; i++) {
        byte[] bad = good.clone();
        for (int n = dice.nextInt(4); n >= 0; n--) {
          bad[dice.nextInt(bad.length)] = (byte) dice.nextInt(256);
        }
        Path file = Files.write(folder.resolve("garbled"), bad);
        try {
          assertTrue(Thumbnail.of(PictureCore.read(file)).length > 0);
        } catch (NoPicture e) {
          assertTrue(!e.why().isEmpty());
        }
      }
    }
  }

  @Test
  void aPictureThatSaysItIsHugeIsRefusedBeforeItIsDecoded() throws Exception {
    byte[] bomb = PictureScenes.claiming(30_000, 30_000, 1);
    assertTrue(bomb.length < 1000);
    noPicture(bomb, "30000 by 30000");
    noPicture(PictureScenes.claiming(-1, 5, 1), "pixels");
    noPicture(PictureScenes.claiming(0, 5, 1), "no pixels");
    noPicture(PictureScenes.claiming(20_000, 5_001, 1), "20000 by 5001");
    byte[] jpeg = PictureScenes.jpeg(64, 64);
    for (int i = 0; i < jpeg.length; i++) {
      if ((jpeg[i] & 0xFF) == 0xFF && (jpeg[i + 1] & 0xFF) == 0xC0) {
        Arrays.fill(jpeg, i + 5, i + 9, (byte) 0xFF);
        break;
      }
    }
    noPicture(jpeg, "65535 by 65535");
  }

  @Test
  void theLargestPictureTakenGivesASmallOne() throws Exception {
    byte[] file = PictureScenes.claiming(20_000, 5_000, 5_000);
    assertTrue(file.length < 20_000, "a bomb of 12 MB of pixels in " + file.length + " bytes");
    BufferedImage small = small(added(file));
    assertEquals(List.of(320, 80), List.of(small.getWidth(), small.getHeight()));
  }

  @Test
  void whatIsPackedInMetadataIsNeverUnpacked() throws Exception {
    BufferedImage indexed = new BufferedImage(40, 40, BufferedImage.TYPE_BYTE_INDEXED);
    ByteArrayOutputStream text = new ByteArrayOutputStream();
    text.write(new byte[] {'C', 0, 0});
    // 300 MB packed in 300 kB: more than a small computer's heap.
    text.write(PictureScenes.zeros(300L << 20));
    byte[] file =
        PictureScenes.withChunk(PictureScenes.file(indexed, "png"), "zTXt", text.toByteArray());
    long before = allocated();
    PrintPicture picture = added(file);
    assertTrue(allocated() - before < 50L << 20, "what is packed was not unpacked");
    assertArrayEquals(file, Files.readAllBytes(log.archive().file(picture, false)));
  }

  /** Bytes this thread has asked for so far. */
  private static long allocated() {
    return ManagementFactory.getThreadMXBean() instanceof com.sun.management.ThreadMXBean threads
        ? threads.getCurrentThreadAllocatedBytes()
        : 0;
  }

  @Test
  void aProgressivePictureThatMustBeHeldWholeIsBounded() throws Exception {
    byte[] jpeg = PictureScenes.progressiveJpeg(64, 64);
    for (int i = 0; i < jpeg.length; i++) {
      if ((jpeg[i] & 0xFF) == 0xFF && (jpeg[i + 1] & 0xFF) == 0xC2) {
        jpeg[i + 5] = 0x10; // 4096 rows and some, and as many columns
        jpeg[i + 7] = 0x10;
        break;
      }
    }
    noPicture(jpeg, "progressive");
  }

  @Test
  void aFileLargerThanTwelveMegabytesIsNotReadOn() throws Exception {
    long[] read = {0};
    InputStream endless =
        new InputStream() {
          @Override
          public int read() {
            read[0]++;
            return 0xFF;
          }

          @Override
          public int read(byte[] into, int from, int length) {
            read[0] += length;
            return length;
          }
        };
    Checked<PrintPicture> checked = log.pictures().add(1, endless, EVENING);
    Problem problem = assertInstanceOf(Checked.Bad.class, checked).problem();
    assertTrue(problem.found().contains("12 MB"), problem.found());
    assertTrue(read[0] <= Pictures.BYTES_MAX + 64 * 1024, read[0] + " bytes were read");
    assertEquals(List.of(), files());
  }

  @Test
  void aSenderWhoBreaksOffLeavesNothing() throws IOException {
    byte[] some = Arrays.copyOf(PictureScenes.jpeg(400, 300), 2000);
    InputStream broken =
        new InputStream() {
          private final InputStream begun = new ByteArrayInputStream(some);

          @Override
          public int read() throws IOException {
            int one = begun.read();
            if (one < 0) {
              throw new IOException("broken off");
            }
            return one;
          }

          @Override
          public int read(byte[] into, int from, int length) throws IOException {
            into[from] = (byte) read();
            return 1;
          }
        };
    assertThrows(IOException.class, () -> log.pictures().add(1, broken, EVENING));
    assertEquals(List.of(), log.archive().entries(1).pictures());
    assertEquals(List.of(), files());
  }

  @Test
  void aPictureTakenBackIsNoLongerListedButItsFilesStay() throws Exception {
    PrintPicture picture = added(PictureScenes.jpeg(64, 64));
    assertEquals(Optional.of(picture), log.pictures().takeBack(picture.id(), EVENING));
    assertEquals(Optional.empty(), log.pictures().takeBack(picture.id(), EVENING));
    assertEquals(Optional.empty(), log.archive().picture(picture.id()));
    assertEquals(List.of(), log.archive().entries(1).pictures());
    assertEquals(picture.file(), log.archive().entries(1).history().get(0).was());
    assertEquals(2, files().size());
  }

  @Test
  void picturesOfOnePrintAreBoundedAndOfNoPrintThereAreNone() throws Exception {
    byte[] file = PictureScenes.jpeg(16, 16);
    for (int i = 0; i < PrintPicture.PICTURES_MAX; i++) {
      added(file);
    }
    Checked<PrintPicture> more = log.pictures().add(1, new ByteArrayInputStream(file), EVENING);
    assertEquals("print", assertInstanceOf(Checked.Bad.class, more).problem().field());
    Checked<PrintPicture> none = log.pictures().add(9, new ByteArrayInputStream(file), EVENING);
    assertEquals("print", assertInstanceOf(Checked.Bad.class, none).problem().field());
    assertEquals(2 * PrintPicture.PICTURES_MAX, files().size());
  }

  @Test
  void aFileWithoutALineInTheLogIsNotListedAndAHalfOneIsRemoved() throws Exception {
    added(PictureScenes.jpeg(16, 16));
    log.close();
    Path pictures = folder.resolve("pictures");
    Files.write(pictures.resolve("in-123.part"), new byte[100]);
    Files.write(pictures.resolve("print-1-orphan.jpg"), new byte[100]);
    log = LogFile.open(folder);
    assertEquals(1, log.archive().entries(1).pictures().size());
    assertTrue(files().contains("print-1-orphan.jpg"), "what may be somebody's is not removed");
    assertTrue(files().stream().noneMatch(name -> name.endsWith(".part")));
  }
}
