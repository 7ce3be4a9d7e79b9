package trayward.host.web;

import trayward.host.bath.Problem;

/** A request that gets an RFC 9457 problem for an answer. */
final class Refused extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private static final String CONFIRM_FIRST = "Confirm first";

  private final int status;
  private final String title;
  private final String field;
  private final String found;
  private final String accepted;

  private Refused(
      int status, String title, String detail, String field, String found, String accepted) {
    super(detail);
    this.status = status;
    this.title = title;
    this.field = field;
    this.found = found;
    this.accepted = accepted;
  }

  /** 400: a field is wrong. */
  static Refused field(String field, String found, String accepted) {
    String detail = field + ": found " + found + ", accepted is " + accepted;
    return new Refused(400, "Bad request", detail, field, found, accepted);
  }

  /** 400: a domain found a field wrong. */
  static Refused problem(Problem problem) {
    return field(problem.field(), problem.found(), problem.accepted());
  }

  /** 409: asked rightly, and refused as things stand. */
  static Refused conflict(String why) {
    return new Refused(409, "Refused", why, "", "", "");
  }

  /** 409: carried out once it is asked with a confirmation. */
  static Refused confirmFirst(String why) {
    return new Refused(409, CONFIRM_FIRST, why, "", "", "");
  }

  /** 401: who asks did not show to be let in. */
  static Refused notKnown(String why) {
    return new Refused(401, "Not let in", why, "", "", "");
  }

  /** 429: asked too often. */
  static Refused tooMany(String why) {
    return new Refused(429, "Too many tries", why, "", "", "");
  }

  /** 404. */
  static Refused missing(String what) {
    return new Refused(404, "Not found", what, "", "", "");
  }

  /** 503: the controller or the log does not answer. */
  static Refused unavailable(String why) {
    return new Refused(503, "Not delivered", why, "", "", "");
  }

  boolean confirmable() {
    return title.equals(CONFIRM_FIRST);
  }

  int status() {
    return status;
  }

  String title() {
    return title;
  }

  String detail() {
    return String.valueOf(getMessage());
  }

  String field() {
    return field;
  }

  String found() {
    return found;
  }

  String accepted() {
    return accepted;
  }
}
