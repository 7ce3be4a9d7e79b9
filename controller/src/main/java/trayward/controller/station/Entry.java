package trayward.controller.station;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * One line of the register dictionary: where a value stands, how, what it means, and where the
 * station takes it from. Immutable.
 */
public final class Entry {

  private final int address;
  private final int words;
  private final Form form;
  private final String name;
  private final String unit;
  private final String meaning;
  private final ToDoubleFunction<Moment> number;
  private final Function<Moment, String> text;

  private Entry(
      int address,
      int words,
      Form form,
      String name,
      String unit,
      String meaning,
      ToDoubleFunction<Moment> number,
      Function<Moment, String> text) {
    this.address = address;
    this.words = words;
    this.form = form;
    this.name = name;
    this.unit = unit;
    this.meaning = meaning;
    this.number = number;
    this.text = text;
  }

  static Entry number(
      int address,
      Form form,
      String name,
      String unit,
      String meaning,
      ToDoubleFunction<Moment> number) {
    return new Entry(address, form.words(), form, name, unit, meaning, number, m -> "");
  }

  static Entry text(
      int address, int words, String name, String meaning, Function<Moment, String> text) {
    return new Entry(address, words, Form.TEXT, name, "", meaning, m -> Double.NaN, text);
  }

  /** Address of its first register. */
  public int address() {
    return address;
  }

  /** How many registers it takes. */
  public int words() {
    return words;
  }

  /** How it stands there. */
  public Form form() {
    return form;
  }

  /** Its name. */
  public String name() {
    return name;
  }

  /** Its unit; empty where it has none. */
  public String unit() {
    return unit;
  }

  /** What it means. */
  public String meaning() {
    return meaning;
  }

  /** Its registers in a moment. */
  int[] encode(Moment moment) {
    int[] into = new int[words];
    if (form == Form.TEXT) {
      putText(text.apply(moment), into);
    } else {
      form.put(number.applyAsDouble(moment), into, 0);
    }
    return into;
  }

  /** What does not fit is left out, whole characters at a time. */
  private static void putText(String value, int[] into) {
    int end = value.length();
    byte[] bytes = value.getBytes(StandardCharsets.UTF_8);
    while (bytes.length > 2 * into.length) {
      end = value.offsetByCodePoints(end, -1);
      bytes = value.substring(0, end).getBytes(StandardCharsets.UTF_8);
    }
    byte[] padded = Arrays.copyOf(bytes, 2 * into.length);
    for (int i = 0; i < into.length; i++) {
      into[i] = ((padded[2 * i] & 0xFF) << 8) | (padded[2 * i + 1] & 0xFF);
    }
  }

  /** The number in a block; NaN where it is not valid. */
  public double number(Block block) {
    return form.get(block.word(address), words == 2 ? block.word(address + 1) : 0);
  }

  /** The number in a block that is always valid, as a whole one. */
  public int whole(Block block) {
    return (int) number(block);
  }

  /** The text in a block. */
  public String text(Block block) {
    byte[] bytes = new byte[2 * words];
    int length = 0;
    for (int i = 0; i < words; i++) {
      bytes[2 * i] = (byte) (block.word(address + i) >> 8);
      bytes[2 * i + 1] = (byte) block.word(address + i);
    }
    while (length < bytes.length && bytes[length] != 0) {
      length++;
    }
    return new String(bytes, 0, length, StandardCharsets.UTF_8);
  }
}
