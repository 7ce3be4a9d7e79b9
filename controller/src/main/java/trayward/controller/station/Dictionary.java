package trayward.controller.station;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import trayward.controller.port.ProbeRole;

/** Every input register, by address. The blocks have gaps, which read as 0. Immutable. */
public final class Dictionary {

  /** All of them, by address. */
  public static final List<Entry> INPUTS = inputs();

  private static final int SIZE = EventRegisters.BASE + EventRegisters.EACH * EventRegisters.SLOTS;
  private static final int[] INDEX = index();

  private Dictionary() {}

  private static List<Entry> inputs() {
    List<Entry> all = new ArrayList<>(StatusRegisters.all());
    all.addAll(TrayRegisters.all());
    all.addAll(UpkeepRegisters.all());
    all.addAll(ProbeRegisters.all());
    all.addAll(AnswerRegisters.all());
    all.addAll(EventRegisters.all());
    all.sort(Comparator.comparingInt(Entry::address));
    return List.copyOf(all);
  }

  private static int[] index() {
    int[] index = new int[SIZE];
    Arrays.fill(index, -1);
    for (int i = 0; i < INPUTS.size(); i++) {
      Entry entry = INPUTS.get(i);
      for (int at = entry.address(); at < entry.address() + entry.words(); at++) {
        if (index[at] >= 0) {
          throw new IllegalStateException("two values stand at " + at);
        }
        index[at] = i;
      }
    }
    return index;
  }

  /** Place in {@link #INPUTS} of the value that has a register at this address; -1 for none. */
  static int indexOf(int address) {
    return address < SIZE ? INDEX[address] : -1;
  }

  /** Whether nothing stands at an address within a block that a host reads whole. */
  static boolean gap(int address) {
    return address < SIZE && indexOf(address) < 0 && within(address);
  }

  private static boolean within(int address) {
    return in(address, 0, StatusRegisters.WORDS)
        || in(address, TrayRegisters.BASE, TrayRegisters.WORDS)
        || in(address, UpkeepRegisters.BASE, UpkeepRegisters.WORDS)
        || in(address, ProbeRegisters.base(ProbeRole.BATH), ProbeRegisters.WORDS)
        || in(address, ProbeRegisters.base(ProbeRole.SECOND_BATH), ProbeRegisters.WORDS)
        || in(address, ProbeRegisters.base(ProbeRole.PLATE), ProbeRegisters.WORDS);
  }

  private static boolean in(int address, int base, int words) {
    return address >= base && address < base + words;
  }
}
