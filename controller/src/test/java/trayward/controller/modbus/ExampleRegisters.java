package trayward.controller.modbus;

import java.util.Arrays;

/** Registers of the application protocol's worked examples, which remember what is written. */
final class ExampleRegisters implements Registers {

  /** Everything from address 0 on; a value of -1 is no such address. */
  final int[] coils = filled();

  final int[] discreteInputs = filled();
  final int[] holding = filled();
  final int[] inputs = filled();
  boolean broken;

  private static int[] filled() {
    int[] none = new int[256];
    Arrays.fill(none, Image.NONE);
    return none;
  }

  /** The tables of sections 6.1, 6.3, 6.4, 6.6 and 6.12. */
  static ExampleRegisters ofTheStandard() {
    ExampleRegisters r = new ExampleRegisters();
    int[] states = {0xCD, 0x6B, 0x05};
    for (int i = 0; i < 19; i++) {
      r.coils[0x13 + i] = (states[i / 8] >> (i % 8)) & 1;
    }
    r.holding[0x6B] = 0x022B;
    r.holding[0x6C] = 0;
    r.holding[0x6D] = 0x0064;
    r.inputs[8] = 0x000A;
    r.holding[1] = 0;
    r.holding[2] = 0;
    return r;
  }

  @Override
  public Image image() {
    if (broken) {
      throw new IllegalStateException("broken on purpose");
    }
    return new Image() {
      @Override
      public int coil(int address) {
        return at(coils, address);
      }

      @Override
      public int discreteInput(int address) {
        return at(discreteInputs, address);
      }

      @Override
      public int holdingRegister(int address) {
        return at(holding, address);
      }

      @Override
      public int inputRegister(int address) {
        return at(inputs, address);
      }
    };
  }

  private static int at(int[] table, int address) {
    return address < table.length ? table[address] : Image.NONE;
  }

  @Override
  public Written writeCoils(int address, boolean[] values) {
    for (int i = 0; i < values.length; i++) {
      if (at(coils, address + i) == Image.NONE) {
        return Written.NO_SUCH_ADDRESS;
      }
    }
    for (int i = 0; i < values.length; i++) {
      coils[address + i] = values[i] ? 1 : 0;
    }
    return Written.DONE;
  }

  @Override
  public Written writeRegisters(int address, int[] values) {
    for (int i = 0; i < values.length; i++) {
      if (at(holding, address + i) == Image.NONE) {
        return Written.NO_SUCH_ADDRESS;
      }
    }
    System.arraycopy(values, 0, holding, address, values.length);
    return Written.DONE;
  }

  /** Everything that can be changed, as one text. */
  String written() {
    return Arrays.toString(coils) + Arrays.toString(holding);
  }
}
