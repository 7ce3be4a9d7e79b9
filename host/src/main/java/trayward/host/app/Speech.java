package trayward.host.app;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.spi.ContextAwareBase;
import org.slf4j.Logger;

/**
 * What the program says of itself, on standard error. In code and not in a file of XML: a parser
 * for it would cost a small board two megabytes and the start a tenth of a second. Found by its
 * name in {@code META-INF/services}, called once by whoever logs first.
 */
public final class Speech extends ContextAwareBase implements Configurator {

  private static final String PATTERN = "%d{HH:mm:ss.SSS} %-5level %logger{0}: %msg%n%rEx";

  @Override
  public ExecutionStatus configure(LoggerContext context) {
    PatternLayoutEncoder lines = new PatternLayoutEncoder();
    lines.setContext(context);
    lines.setPattern(PATTERN);
    lines.start();
    ConsoleAppender<ILoggingEvent> standardError = new ConsoleAppender<>();
    standardError.setContext(context);
    standardError.setName("STDERR");
    standardError.setTarget("System.err");
    standardError.setEncoder(lines);
    standardError.start();
    context.getLogger(Logger.ROOT_LOGGER_NAME).addAppender(standardError);
    context.getLogger(Logger.ROOT_LOGGER_NAME).setLevel(Level.INFO);
    context.getLogger("org.eclipse.jetty").setLevel(Level.WARN);
    context.getLogger("io.javalin").setLevel(Level.WARN);
    // A taken port is told in one line of our own.
    context.getLogger("io.javalin.Javalin").setLevel(Level.OFF);
    // What it finds wrong with lines and chip is told in one sentence of our own.
    context.getLogger("com.pi4j").setLevel(Level.OFF);
    return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
  }
}
