package trayward.host.web;

import java.util.OptionalLong;

/** The print that is being repeated, shown under the new one. Safe on any thread. */
final class Guide {

  private volatile long print;

  /** Its number; empty where nothing is repeated. */
  OptionalLong print() {
    long number = print;
    return number > 0 ? OptionalLong.of(number) : OptionalLong.empty();
  }

  void follow(long number) {
    print = number;
  }

  void none() {
    print = 0;
  }
}
