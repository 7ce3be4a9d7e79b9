package trayward.controller.onewire;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import trayward.controller.port.MonotonicClock;

/**
 * One conversion for all probes of a bus at once, where the kernel offers it: {@code
 * w1_bus_masterN/therm_bulk_read} beside the probes' folders. Three probes then take 0.8 s a round
 * in place of 2.25 s. Probe thread only.
 *
 * <p>The driver (w1_therm.c of the kernel, read) reports no failure of a conversion. It marks every
 * probe of the bus all the same, and the next read of a marked probe gives what its memory holds,
 * be that old. So a trigger that came back sooner than a conversion can be is not believed, and a
 * probe that may still be marked is {@link #owed} a read that nobody uses.
 */
final class BulkConversion {

  private static final Logger LOG = LoggerFactory.getLogger(BulkConversion.class);

  private static final String FILE = "therm_bulk_read";

  /** The fastest conversion of the data sheet takes 93.75 ms at most, typically some 60 %. */
  private static final long SHORTEST_NANOS = TimeUnit.MILLISECONDS.toNanos(50);

  /** A bus that refuses is asked again after so long; its probes are read one by one meanwhile. */
  private static final long REST_NANOS = TimeUnit.MINUTES.toNanos(1);

  /** More masters than any board has pins to spare for. */
  private static final int MOST_MASTERS = 16;

  private final Path root;
  private final MonotonicClock clock;
  private final Trigger trigger;
  private final Map<Path, Long> refusedNanos = new HashMap<>();
  private final Set<String> owed = new HashSet<>();

  BulkConversion(Path root, MonotonicClock clock, Trigger trigger) {
    this.root = root;
    this.clock = clock;
    this.trigger = trigger;
  }

  /**
   * Converts wherever it can be done at once.
   *
   * @param names folders of the probes that are about to be read, each of them
   * @return when the conversion of each probe began; a probe that is not in it converts as it is
   *     read
   */
  Map<String, Long> convert(Collection<String> names) {
    Map<String, Long> began = new HashMap<>();
    for (Path master : masters()) {
      List<String> here = probesOf(master, names);
      if (!here.isEmpty() && !resting(master)) {
        long from = clock.nanos();
        if (triggered(master, here, from)) {
          here.forEach(name -> began.putIfAbsent(name, from));
        }
      }
    }
    owed.removeAll(began.keySet()); // each is read next
    return began;
  }

  /** Whether a probe is owed an unused read before one that converts; asking pays it. */
  boolean owed(String name) {
    return owed.remove(name);
  }

  private boolean triggered(Path master, List<String> here, long fromNanos) {
    String why;
    try {
      trigger.write(master.resolve(FILE));
      owed.addAll(here);
      if (clock.nanos() - fromNanos >= SHORTEST_NANOS) {
        refusedNanos.remove(master);
        return true;
      }
      why = "no conversion is that fast";
    } catch (IOException | RuntimeException e) {
      why = e.toString();
    }
    if (refusedNanos.put(master, clock.nanos()) == null) {
      LOG.info("{} converts no probes at once ({}): they are read one by one", master, why);
    }
    return false;
  }

  private boolean resting(Path master) {
    Long refused = refusedNanos.get(master);
    return refused != null && clock.nanos() - refused < REST_NANOS;
  }

  private List<Path> masters() {
    List<Path> found = new ArrayList<>();
    try (DirectoryStream<Path> all = Files.newDirectoryStream(root, "w1_bus_master*")) {
      for (Path master : all) {
        if (found.size() < MOST_MASTERS && Files.exists(master.resolve(FILE))) {
          found.add(master);
        }
      }
    } catch (IOException | RuntimeException e) {
      found.clear(); // no folder, no bus: the reads will say so
    }
    return found;
  }

  /** Those of a bus; all of them where the master lists no probe at all. */
  private static List<String> probesOf(Path master, Collection<String> names) {
    List<String> here = names.stream().filter(name -> Files.exists(master.resolve(name))).toList();
    return here.isEmpty() && W1Folder.probes(master).isEmpty() ? List.copyOf(names) : here;
  }
}
