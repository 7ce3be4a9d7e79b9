package trayward.host.link;

import trayward.controller.modbus.ModbusClient.Reply;

/** A reply that is no answer, in words. */
final class Replies {

  private Replies() {}

  static String words(Reply reply) {
    if (reply instanceof Reply.Down down) {
      return down.why();
    }
    if (reply instanceof Reply.Refused refused) {
      return "the controller refused with code " + refused.code();
    }
    return reply instanceof Reply.Garbled
        ? "what the controller answered was garbled"
        : "the controller did not answer";
  }
}
