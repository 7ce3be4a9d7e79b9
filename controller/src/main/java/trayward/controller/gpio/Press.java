package trayward.controller.gpio;

/**
 * A contact whose debounced edges are heard between scans, so that none is missed. It is fed by the
 * thread that hears the edges and asked by the scan: one lock.
 */
final class Press {

  private boolean down;
  private boolean caught;

  /** An edge that stood still for its debounce. */
  synchronized void edge(boolean active) {
    down = active;
    caught |= active;
  }

  /**
   * Whether it is down, or was between the scan before and this one.
   *
   * @param level whether the line itself is active now: a line that came back without an edge is up
   */
  synchronized boolean take(boolean level) {
    boolean was = caught || (down && level);
    caught = false;
    return was;
  }
}
