package trayward.host.web;

import java.util.concurrent.Semaphore;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import trayward.host.web.guard.Refusal;
import trayward.host.web.guard.Rules;

/**
 * Lets only so many requests hold a thread at a time, so that the pool always has some for a stop
 * (SR-14). One more is refused at once, not kept waiting. Safe on any thread.
 */
final class Gate extends Handler.Wrapper {

  /** A few browsers and a script. Streams hold no thread, nor does a body that is coming in. */
  static final int MOST = 12;

  /** Pictures are read from the line while they hold a thread: a slow line must not hold all. */
  private static final int MOST_PICTURES = 2;

  private static final Refusal BUSY =
      new Refusal(503, "Busy", "too many requests at once: ask again in a moment");

  private final Semaphore all = new Semaphore(MOST);
  private final Semaphore pictures = new Semaphore(MOST_PICTURES);

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    String path = Request.getPathInContext(request);
    boolean picture = request.getMethod().equals("POST") && Rules.PICTURES.matcher(path).matches();
    return picture
        ? through(pictures, request, response, callback)
        : through(all, request, response, callback);
  }

  private boolean through(Semaphore of, Request request, Response response, Callback callback)
      throws Exception {
    if (!of.tryAcquire()) {
      Answers.refuse(response, callback, BUSY);
      return true;
    }
    try {
      return super.handle(request, response, callback);
    } finally {
      of.release();
    }
  }
}
