package trayward.controller.port;

/** What a read-back line says of a relay's contact. */
public enum Contact {
  /** No read-back is wired: the contact is judged by heat alone. */
  NOT_WIRED,
  /** The contact is open. */
  OPEN,
  /** The contact is closed. */
  CLOSED
}
