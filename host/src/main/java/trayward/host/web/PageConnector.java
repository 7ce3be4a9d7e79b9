package trayward.host.web;

import org.eclipse.jetty.http.HttpCompliance;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.resource.ResourceFactory;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import trayward.host.web.guard.Door;

/** Where connections come in, with their bounds. Stateless. */
final class PageConnector {

  /** A line on which nothing moves is given up, ms. Streams move four times a second. */
  private static final long IDLE_MS = 20_000;

  /** Address and headers together: the longest search fits twice. */
  private static final int MAX_HEADERS = 8 * 1024;

  /** Connections that the system may hold for us before they are taken. */
  private static final int BACKLOG = 256;

  private PageConnector() {}

  /** The connector of a door, not yet started. */
  static Connector of(Server server, HttpConfiguration http, Door door) {
    http.setSendServerVersion(false);
    http.setSendXPoweredBy(false);
    http.setRequestHeaderSize(MAX_HEADERS);
    http.setHttpCompliance(HttpCompliance.RFC9110);
    HttpConnectionFactory plain = new HttpConnectionFactory(http);
    ServerConnector connector =
        door.keystore()
            .map(keystore -> secure(server, http, plain, keystore))
            .orElseGet(() -> new ServerConnector(server, plain));
    connector.setHost(door.address());
    connector.setPort(door.port());
    connector.setIdleTimeout(IDLE_MS);
    connector.setAcceptQueueSize(BACKLOG);
    return connector;
  }

  private static ServerConnector secure(
      Server server, HttpConfiguration http, HttpConnectionFactory plain, Door.Keystore keystore) {
    http.addCustomizer(new SecureRequestCustomizer(false)); // names are checked by the rules
    SslContextFactory.Server tls = new SslContextFactory.Server();
    tls.setKeyStoreResource(ResourceFactory.of(server).newResource(keystore.file()));
    tls.setKeyStorePassword(keystore.password());
    tls.setIncludeProtocols("TLSv1.3", "TLSv1.2");
    return new ServerConnector(server, new SslConnectionFactory(tls, "http/1.1"), plain);
  }
}
