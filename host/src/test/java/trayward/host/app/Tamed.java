package trayward.host.app;

import com.sun.jdi.ArrayReference;
import com.sun.jdi.ArrayType;
import com.sun.jdi.Bootstrap;
import com.sun.jdi.ClassType;
import com.sun.jdi.Field;
import com.sun.jdi.Method;
import com.sun.jdi.ObjectCollectedException;
import com.sun.jdi.ObjectReference;
import com.sun.jdi.ReferenceType;
import com.sun.jdi.StringReference;
import com.sun.jdi.ThreadReference;
import com.sun.jdi.VMDisconnectedException;
import com.sun.jdi.VMOutOfMemoryException;
import com.sun.jdi.VirtualMachine;
import com.sun.jdi.connect.AttachingConnector;
import com.sun.jdi.connect.Connector;
import com.sun.jdi.event.BreakpointEvent;
import com.sun.jdi.event.Event;
import com.sun.jdi.event.EventSet;
import com.sun.jdi.request.BreakpointRequest;
import com.sun.jdi.request.EventRequest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Breaks the real, unaltered program from outside, through its Java machine's debugger's interface:
 * throws errors at a chosen place of the scan thread, freezes single threads, fills the heap. One
 * thread of the test, and one that follows the machine's events.
 */
final class Tamed implements AutoCloseable {

  /** Sizes of what fills the heap, bytes: large ones first, then the chinks between them. */
  private static final int[] FILL_BYTES = {1 << 20, 1 << 16, 1 << 12, 1 << 8};

  /** More of a size than fits in any heap used here, so that filling ends. */
  private static final int MAX_FILL = 20_000;

  private final VirtualMachine machine;
  private final CountDownLatch thrown = new CountDownLatch(1);
  private final List<ThreadReference> frozen = new ArrayList<>();
  private volatile String error = "";
  private volatile Optional<String> onlyLine = Optional.empty();
  private volatile long thrownNanos;

  private Tamed(VirtualMachine machine) {
    this.machine = machine;
    Thread events = new Thread(this::follow, "tamed events");
    events.setDaemon(true);
    events.start();
  }

  /** Takes hold of a program that was started with {@link RunningTrayward#TAMED}. */
  static Tamed attach(RunningTrayward program) throws Exception {
    AttachingConnector socket =
        Bootstrap.virtualMachineManager().attachingConnectors().stream()
            .filter(c -> c.transport().name().equals("dt_socket"))
            .findFirst()
            .orElseThrow();
    Map<String, Connector.Argument> arguments = socket.defaultArguments();
    argument(arguments, "hostname", "127.0.0.1");
    argument(arguments, "port", Integer.toString(program.tamePort()));
    return new Tamed(socket.attach(arguments));
  }

  private static void argument(
      Map<String, Connector.Argument> arguments, String name, String value) {
    Connector.Argument argument = arguments.get(name);
    if (argument == null) {
      throw new IllegalStateException("the connector takes no " + name);
    }
    argument.setValue(value);
  }

  /**
   * From now on throws whenever the scan thread enters a method.
   *
   * @param place class and method, as {@code package.Class.method}
   * @param line only where the object is the output line of this name; empty for every one
   * @param what the class of what is thrown, which needs a constructor without parameters
   * @return when it was thrown first, as {@link System#nanoTime}
   */
  long throwAt(String place, Optional<String> line, String what) throws InterruptedException {
    error = what;
    onlyLine = line;
    int dot = place.lastIndexOf('.');
    for (Method method :
        type(place.substring(0, dot)).methodsByName(place.substring(dot + 1)).stream()
            .filter(m -> !m.isAbstract() && !m.isBridge())
            .toList()) {
      BreakpointRequest stop =
          machine.eventRequestManager().createBreakpointRequest(method.location());
      stop.setSuspendPolicy(EventRequest.SUSPEND_EVENT_THREAD);
      stop.enable();
    }
    if (!thrown.await(10, TimeUnit.SECONDS)) {
      throw new IllegalStateException("the scan never came to " + place);
    }
    return thrownNanos;
  }

  private ReferenceType type(String name) {
    List<ReferenceType> types = machine.classesByName(name);
    if (types.isEmpty()) {
      throw new IllegalStateException("the program has not loaded " + name);
    }
    return types.get(0);
  }

  private void follow() {
    try {
      while (true) {
        EventSet events = machine.eventQueue().remove();
        for (Event event : events) {
          if (event instanceof BreakpointEvent stop) {
            at(stop);
          }
        }
        events.resume();
      }
    } catch (VMDisconnectedException | InterruptedException ended) {
      thrown.countDown(); // the program has ended: nothing is left to follow
    }
  }

  private void at(BreakpointEvent stop) {
    ThreadReference thread = stop.thread();
    try {
      if (thread.name().equals("scan") && here(thread)) {
        ClassType what = (ClassType) type(error);
        Method make = what.methodsByName("<init>", "()V").get(0);
        ObjectReference made =
            what.newInstance(thread, make, List.of(), ClassType.INVOKE_SINGLE_THREADED);
        thread.stop(made);
        if (thrown.getCount() > 0) {
          thrownNanos = System.nanoTime();
        }
        thrown.countDown();
      }
    } catch (VMDisconnectedException ended) {
      throw ended;
    } catch (Exception e) {
      throw new IllegalStateException("nothing could be thrown", e);
    }
  }

  private boolean here(ThreadReference thread) throws Exception {
    Optional<String> wanted = onlyLine;
    if (wanted.isEmpty()) {
      return true;
    }
    ObjectReference line = thread.frame(0).thisObject();
    Field name = line.referenceType().fieldByName("val$name");
    return name != null
        && line.getValue(name) instanceof StringReference text
        && text.value().equals(wanted.get());
  }

  /** Freezes the one thread of this name, wherever it is. */
  void freeze(String name) {
    ThreadReference thread =
        machine.allThreads().stream()
            .filter(t -> t.name().equals(name))
            .findFirst()
            .orElseThrow(() -> new IllegalStateException("the program has no thread " + name));
    thread.suspend();
    frozen.add(thread);
  }

  /** Freezes every thread but these, wherever they are; how many. */
  int freezeAllBut(Set<String> names) {
    for (ThreadReference thread : machine.allThreads()) {
      if (!names.contains(thread.name())) {
        thread.suspend();
        frozen.add(thread);
      }
    }
    return frozen.size();
  }

  /** Lets all frozen threads go on. */
  void thaw() {
    frozen.forEach(ThreadReference::resume);
    frozen.clear();
  }

  /** Leaks into the program's heap until it takes no more; bytes that went in. */
  long fillHeap() {
    ArrayType bytes = (ArrayType) type("byte[]");
    long filled = 0;
    for (int size : FILL_BYTES) {
      try {
        for (int i = 0; i < MAX_FILL; i++) {
          filled += leak(bytes, size);
        }
      } catch (VMOutOfMemoryException full) {
        // Nothing of this size fits any more: on to a smaller one.
      } catch (VMDisconnectedException ended) {
        return filled;
      }
    }
    return filled;
  }

  private static long leak(ArrayType bytes, int size) {
    try {
      ArrayReference leak = bytes.newInstance(size);
      leak.disableCollection();
      return size;
    } catch (ObjectCollectedException swept) {
      return 0; // the collector was quicker: another one will stay
    }
  }

  @Override
  public void close() {
    try {
      machine.dispose();
    } catch (VMDisconnectedException ended) {
      // The program has ended: there is nothing to let go.
    }
  }
}
