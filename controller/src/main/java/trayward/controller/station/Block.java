package trayward.controller.station;

/** Registers that were read together, so of one moment. Immutable. */
public final class Block {

  private final int from;
  private final int[] words;

  /**
   * A block.
   *
   * @param from address of the first register
   * @param words the registers, 0 to 65535 each
   */
  public Block(int from, int... words) {
    this.from = from;
    this.words = words.clone();
  }

  int word(int address) {
    return words[address - from];
  }
}
