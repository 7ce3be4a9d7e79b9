package trayward.controller.gpio;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalInputConfig;
import com.pi4j.io.gpio.digital.DigitalInputProvider;
import com.pi4j.library.gpiod.internal.GpioDContext;
import com.pi4j.library.gpiod.internal.GpioLine;
import com.pi4j.plugin.gpiod.provider.gpio.digital.GpioDDigitalInput;
import com.pi4j.plugin.gpiod.provider.gpio.digital.GpioDDigitalInputProviderImpl;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;

/**
 * Pi4J's inputs, made so that each surely hears its edges.
 *
 * <p>Pi4J 2.8.0 starts the thread that hears an input and only then notes that it has started one;
 * the thread looks at that note, and where it is quicker it ends at once: the input is deaf for
 * good, and says nothing of it. On a busy computer this was seen with one input in a dozen. Here
 * the thread waits until the input is made.
 */
final class SureInputs extends GpioDDigitalInputProviderImpl {

  @Override
  public DigitalInput create(DigitalInputConfig config) {
    GpioLine line = GpioDContext.getInstance().getOrOpenLine(config.address());
    DigitalInput input = new SureInput(line, this, config);
    context.registry().add(input);
    return input;
  }

  private static final class SureInput extends GpioDDigitalInput {
    SureInput(GpioLine line, DigitalInputProvider provider, DigitalInputConfig config) {
      super(line, provider, config);
    }

    @Override
    public DigitalInput initialize(Context context) {
      CountDownLatch made = new CountDownLatch(1);
      try {
        return super.initialize(holding(context, made));
      } finally {
        made.countDown();
      }
    }
  }

  /** The same context, whose tasks begin once {@code made} is open. */
  static Context holding(Context context, CountDownLatch made) {
    return (Context)
        Proxy.newProxyInstance(
            Context.class.getClassLoader(),
            new Class<?>[] {Context.class},
            (proxy, method, arguments) -> {
              if (method.getName().equals("submitTask")) {
                return submit(context, (Runnable) arguments[0], made);
              }
              return invoke(context, method, arguments);
            });
  }

  private static Future<?> submit(Context context, Runnable task, CountDownLatch made) {
    return context.submitTask(
        () -> {
          try {
            made.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return;
          }
          task.run();
        });
  }

  private static @Nullable Object invoke(
      Context context, Method method, Object @Nullable [] arguments) throws Throwable {
    try {
      return method.invoke(context, arguments);
    } catch (InvocationTargetException e) {
      Throwable cause = e.getCause();
      throw cause == null ? e : cause;
    }
  }
}
