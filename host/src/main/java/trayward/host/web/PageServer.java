package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.HttpResponseException;
import io.javalin.http.staticfiles.JavalinStaticResourceHandler;
import io.javalin.http.staticfiles.Location;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Map;
import java.util.function.LongSupplier;
import org.eclipse.jetty.io.EofException;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.host.link.TrayLink;
import trayward.host.store.LogFailed;
import trayward.host.store.TrayLog;
import trayward.host.web.guard.Door;
import trayward.host.web.guard.Entrance;
import trayward.host.web.guard.Rules;

/** The page and the JSON interface. Started and closed by one thread; serves on its own. */
public final class PageServer implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(PageServer.class);

  /** Threads: what the gate lets hold one, what takes connections in, and some left for a stop. */
  private static final int THREADS = Gate.MOST + 12;

  /** What a browser may load: this server's own files, no script in the page itself. */
  private static final Map<String, String> HEADERS =
      Map.of(
          "Content-Security-Policy",
          "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self';"
              + " img-src 'self' data:; base-uri 'none'; form-action 'none';"
              + " frame-ancestors 'none'",
          "Cache-Control",
          "no-store");

  private final Javalin server;
  private final StatusStream stream;
  private final StopDesk stops;

  private PageServer(Javalin server, StatusStream stream, StopDesk stops) {
    this.server = server;
    this.stream = stream;
    this.stops = stops;
  }

  /**
   * Starts serving.
   *
   * @param door where, and to whom
   * @throws io.javalin.util.JavalinBindException where the port is taken
   */
  public static PageServer start(Door door, TrayLink link, TrayLog log, Logbook logbook) {
    return start(door, link, log, logbook, () -> System.nanoTime() / 1_000_000);
  }

  /** The same by another clock, monotonic, ms. */
  static PageServer start(
      Door door, TrayLink link, TrayLog log, Logbook logbook, LongSupplier nowMs) {
    Entrance entrance = new Entrance(door.password(), nowMs);
    StopDesk stops = new StopDesk(link);
    Guard guard = new Guard(new Rules(door), entrance, stops, link, nowMs);
    Guide guide = new Guide();
    StatusJson status = new StatusJson(link, log, logbook, guide);
    StatusStream stream = new StatusStream(status);
    Javalin server =
        Javalin.create(
            config -> {
              configure(config);
              guarded(config, door, guard);
              new LoginApi(entrance, door.keystore().isPresent()).routes(config.routes);
              new LevelApi(link).routes(config.routes); // before the commands of one word
              new UpkeepApi(link).routes(config.routes);
              new ProbeApi(link).routes(config.routes);
              new TrayCalibrationApi(link).routes(config.routes);
              new AlarmApi(link).routes(config.routes);
              new PlanApi().routes(config.routes);
              new TrayApi(link, status, stream, entrance, door.atTray()).routes(config.routes);
              new LogApi(log, logbook, link, door.atTray()).routes(config.routes);
              new BathApi(log, logbook, link, Clock.systemUTC()).routes(config.routes);
              new RepeatApi(log, link, guide).routes(config.routes);
              new AfterApi(log.shelf(), logbook, Clock.system(ZoneId.systemDefault()))
                  .routes(config.routes);
              new ForecastApi(logbook).routes(config.routes);
              new ShelfApi(log.shelf(), Clock.systemUTC()).routes(config.routes);
              new PrintApi(log).routes(config.routes);
              new CorrectionApi(log, logbook).routes(config.routes);
              new PictureApi(log).routes(config.routes);
              problems(config);
            });
    server.start();
    stream.start();
    return new PageServer(server, stream, stops);
  }

  /** Before the interface: guard, then bodies read without a thread, then the gate. */
  private static void guarded(JavalinConfig config, Door door, Guard guard) {
    Gate gate = new Gate();
    EagerContentHandler bodies =
        new EagerContentHandler(
            gate, new EagerContentHandler.RetainedContentLoaderFactory(Rules.MAX_BODY, 0, true));
    bodies.exclude(request -> Rules.PICTURES.matcher(Request.getPathInContext(request)).matches());
    guard.setHandler(bodies);
    config.jetty.modifyServer(server -> server.setHandler(guard));
    config.jetty.addConnector((server, http) -> PageConnector.of(server, http, door));
  }

  private static void configure(JavalinConfig config) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    QueuedThreadPool threads = new QueuedThreadPool(THREADS, 4);
    threads.setName("page");
    threads.setDaemon(true);
    config.jetty.threadPool = threads;
    config.http.maxRequestSize = Rules.MAX_BODY;
    config.http.prefer405over404 = true;
    // Through the class loader: Jetty's own opens the whole jar four times, 10 MB of its names.
    config.resourceHandler(new JavalinStaticResourceHandler());
    config.staticFiles.add(
        files -> {
          files.hostedPath = "/";
          files.directory = "/trayward/page";
          files.location = Location.CLASSPATH;
          files.headers = HEADERS;
        });
  }

  private static void problems(JavalinConfig config) {
    config.routes.exception(Refused.class, (e, ctx) -> Json.problem(ctx, e));
    config.routes.exception(
        LogFailed.class,
        (e, ctx) -> Json.problem(ctx, Refused.unavailable("the log: " + e.getMessage())));
    config.routes.exception(
        HttpResponseException.class,
        (e, ctx) -> {
          ObjectNode node = Json.MAPPER.createObjectNode();
          node.put("type", "about:blank");
          node.put("title", String.valueOf(e.getMessage()));
          node.put("status", e.getStatus());
          node.put("detail", ctx.method() + " " + ctx.path() + ": " + e.getMessage());
          ctx.status(e.getStatus())
              .contentType("application/problem+json; charset=utf-8")
              .result(Json.write(node));
        });
    config.routes.exception(
        EofException.class,
        (e, ctx) -> {
          // Nobody is there to read it; an attacker must not fill the log with it.
          LOG.debug("{} {}: the asker is gone", ctx.method(), ctx.path());
          ctx.status(400);
        });
    config.routes.exception(
        Exception.class,
        (e, ctx) -> {
          LOG.error("{} {} failed", ctx.method(), ctx.path(), e);
          Json.problem(ctx, Refused.unavailable("the host failed; its log says why"));
        });
  }

  /** The port it listens on. */
  public int port() {
    return server.port();
  }

  @Override
  public void close() {
    stream.close();
    server.stop();
    stops.close();
  }
}
