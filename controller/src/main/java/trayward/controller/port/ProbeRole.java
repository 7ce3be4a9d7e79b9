package trayward.controller.port;

/** Which temperature a probe stands for. */
public enum ProbeRole {
  /** In the liquid; always fitted. */
  BATH,
  /** A second one in the liquid; optional. */
  SECOND_BATH,
  /** On the heated plate under the tray; optional. */
  PLATE
}
