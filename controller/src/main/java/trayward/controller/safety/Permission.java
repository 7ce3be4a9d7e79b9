package trayward.controller.safety;

import java.util.Set;
import trayward.controller.event.WithheldReason;

/** What the interlock says of heat in one scan. */
public sealed interface Permission permits HeaterPermit, ContactPermit, Permission.Withheld {

  /**
   * No heat.
   *
   * @param reasons why; never empty
   */
  record Withheld(Set<WithheldReason> reasons) implements Permission {}
}
