package trayward.host.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.HttpResponseException;
import io.javalin.http.staticfiles.Location;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Map;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.host.link.TrayLink;
import trayward.host.store.LogFailed;
import trayward.host.store.TrayLog;

/** The page and the JSON interface. Started and closed by one thread; serves on its own. */
public final class PageServer implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(PageServer.class);

  /** Largest body taken, bytes: the longest notes fit ten times. */
  private static final long MAX_BODY = 64 * 1024;

  /** Threads: a few browsers and a script; streams wait on threads of their own. */
  private static final int THREADS = 16;

  /** What a browser may load: this server's own files, no script in the page itself. */
  private static final Map<String, String> HEADERS =
      Map.of(
          "Content-Security-Policy",
          "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self';"
              + " img-src 'self' data:; base-uri 'none'; form-action 'none';"
              + " frame-ancestors 'none'",
          "X-Content-Type-Options",
          "nosniff",
          "Cache-Control",
          "no-store");

  private final Javalin server;
  private final StatusStream stream;

  private PageServer(Javalin server, StatusStream stream) {
    this.server = server;
    this.stream = stream;
  }

  /**
   * Starts serving.
   *
   * @param address address to listen on
   * @param port TCP port; 0 for any free one
   * @throws io.javalin.util.JavalinBindException where the port is taken
   */
  public static PageServer start(
      String address, int port, TrayLink link, TrayLog log, Logbook logbook) {
    Guide guide = new Guide();
    StatusJson status = new StatusJson(link, log, logbook, guide);
    StatusStream stream = new StatusStream(status);
    Javalin server =
        Javalin.create(
            config -> {
              configure(config, address, port);
              new LevelApi(link).routes(config.routes); // before the commands of one word
              new UpkeepApi(link).routes(config.routes);
              new ProbeApi(link).routes(config.routes);
              new TrayCalibrationApi(link).routes(config.routes);
              new AlarmApi(link).routes(config.routes);
              new PlanApi().routes(config.routes);
              new TrayApi(link, status, stream).routes(config.routes);
              new LogApi(log, logbook, link).routes(config.routes);
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
    return new PageServer(server, stream);
  }

  private static void configure(JavalinConfig config, String address, int port) {
    config.startup.showJavalinBanner = false;
    config.startup.showOldJavalinVersionWarning = false;
    config.jetty.host = address;
    config.jetty.port = port;
    QueuedThreadPool threads = new QueuedThreadPool(THREADS, 4);
    threads.setName("page");
    threads.setDaemon(true);
    config.jetty.threadPool = threads;
    config.http.maxRequestSize = MAX_BODY;
    config.http.prefer405over404 = true;
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
  }
}
