package trayward.controller.modbus;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.locks.LockSupport;

/** A serial port as a line of bytes. One thread; another may close it. */
public final class SerialLine implements ByteLine {

  /** Error that the port library gives where another program holds the port: EAGAIN. */
  private static final int HELD = 11;

  /** Silent reads after which the device file is looked at: about a second. */
  private static final int LOOK_AFTER = 10;

  /** Between two looks for the next byte of a frame, ns; a byte takes 1 ms at 9600 baud. */
  private static final long LOOK_NANOS = 1_000_000L;

  private final SerialPort port;
  private final Path path;
  private final Path real;
  private final byte[] chunk = new byte[RtuFrame.MAX_BYTES];
  private int silent;

  private SerialLine(SerialPort port, Path path, Path real) {
    this.port = port;
    this.path = path;
    this.real = real;
  }

  /**
   * Opens a port.
   *
   * @throws IOException where it is not there, is held by another program or refuses its settings
   */
  public static SerialLine open(SerialSettings settings) throws IOException {
    Path path = Path.of(settings.path());
    Path real;
    SerialPort port;
    try {
      real = path.toRealPath();
      port = SerialPort.getCommPort(settings.path());
    } catch (IOException | SerialPortInvalidPortException e) {
      throw new IOException("serial port " + settings.path() + " is not there", e);
    }
    port.setComPortParameters(
        settings.baud(), 8, stopBits(settings.stopBits()), parity(settings.parity()));
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, IDLE_MS, 0);
    if (!port.openPort(0)) {
      throw new IOException(
          "serial port "
              + settings.path()
              + (port.getLastErrorCode() == HELD
                  ? " is held by another program"
                  : " cannot be opened: error " + port.getLastErrorCode() + " of the system"));
    }
    port.flushIOBuffers(); // what was sent to nobody is nobody's
    return new SerialLine(port, path, real);
  }

  private static int stopBits(int bits) {
    return bits == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT;
  }

  private static int parity(SerialSettings.Parity parity) {
    return switch (parity) {
      case NONE -> SerialPort.NO_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
    };
  }

  @Override
  public int read(byte[] into, int offset) throws IOException {
    if (offset > 0 && !moreComes()) {
      return 0;
    }
    int wanted = Math.min(chunk.length, into.length - offset);
    int came = port.readBytes(chunk, wanted);
    if (came < 0 || !port.isOpen()) {
      throw new IOException("serial port " + path + " is gone");
    }
    if (came == 0) {
      lookAfterTheDevice();
      return 0;
    }
    silent = 0;
    System.arraycopy(chunk, 0, into, offset, came);
    return came;
  }

  /**
   * Whether another byte of the frame comes before its silence. The system's own wait would be a
   * tenth of a second, and with it every answer that late.
   */
  private boolean moreComes() throws IOException {
    for (int looks = 0; looks <= RtuServer.SILENCE_MS; looks++) {
      int there = port.bytesAvailable();
      if (there < 0) {
        throw new IOException("serial port " + path + " is gone");
      }
      if (there > 0) {
        return true;
      }
      LockSupport.parkNanos(LOOK_NANOS);
    }
    return false;
  }

  /** A port pulled out may stay silent for ever and come back as another device. */
  private void lookAfterTheDevice() throws IOException {
    if (++silent % LOOK_AFTER == 0 && !path.toRealPath().equals(real)) {
      throw new IOException("serial port " + path + " is another device now");
    }
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    if (port.writeBytes(bytes, bytes.length) != bytes.length) {
      throw new IOException("serial port " + path + " does not take what is written");
    }
  }

  @Override
  public void discard() throws IOException {
    if (!port.flushIOBuffers()) {
      throw new IOException("serial port " + path + " is gone");
    }
  }

  @Override
  public void close() {
    port.closePort();
  }
}
