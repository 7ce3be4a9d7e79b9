package trayward.host.link;

/** Calls as the controller has them. Stateless. */
final class Calls {

  private Calls() {}

  static trayward.controller.scan.Call of(Call call) {
    return switch (call) {
      case WATCH_NOW -> trayward.controller.scan.Call.WATCH_NOW;
      case MARKED -> trayward.controller.scan.Call.MARKED;
      case TAKEN_BACK -> trayward.controller.scan.Call.TAKEN_BACK;
    };
  }

  static LinkAnswer noAlarm(String cause) {
    return new LinkAnswer.Refused("there is no alarm " + cause);
  }
}
