package trayward.controller.transmitter;

import java.util.List;
import trayward.controller.modbus.DeviceIdentity;
import trayward.controller.modbus.Registers;
import trayward.controller.modbus.Responder;
import trayward.controller.modbus.RtuServer;
import trayward.controller.modbus.SerialLine;
import trayward.controller.modbus.SerialSettings;

/** A transmitter with one input register. */
public record OneRegister(int unit, int register, int value) implements Registers, Registers.Image {

  /** Of this unit, register and value. */
  public static OneRegister of(int unit, int register, int value) {
    return new OneRegister(unit, register, value);
  }

  /** The transmitter at an end of a line; to be started. */
  public RtuServer on(SerialSettings end) {
    return new RtuServer(
        () -> SerialLine.open(end),
        unit,
        new Responder(this, new DeviceIdentity(List.of("test", "slave", "1"))));
  }

  @Override
  public Image image() {
    return this;
  }

  @Override
  public Written writeCoils(int address, boolean[] values) {
    return Written.NO_SUCH_ADDRESS;
  }

  @Override
  public Written writeRegisters(int address, int[] values) {
    return Written.NO_SUCH_ADDRESS;
  }

  @Override
  public int coil(int address) {
    return NONE;
  }

  @Override
  public int discreteInput(int address) {
    return NONE;
  }

  @Override
  public int holdingRegister(int address) {
    return NONE;
  }

  @Override
  public int inputRegister(int address) {
    return address == register ? value : NONE;
  }
}
