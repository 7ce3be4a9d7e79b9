package trayward.host.store;

/** What was brought in is no picture this program takes. The message is one clause. */
final class NoPicture extends Exception {

  private static final long serialVersionUID = 1L;

  NoPicture(String why) {
    super(why);
  }

  /** One clause. */
  String why() {
    return String.valueOf(getMessage());
  }
}
