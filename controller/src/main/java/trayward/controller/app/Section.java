package trayward.controller.app;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import trayward.controller.quantity.Range;

/**
 * One table of a TOML file, read key by key with type and range; {@link #done} refuses whatever was
 * not asked for. Mutable; one thread.
 */
final class Section {

  /** A string longer than this is no name or path of ours. */
  private static final int MAX_TEXT = 1024;

  private final String file;
  private final String path;
  private final ObjectNode node;
  private final boolean present;
  private final Set<String> known = new LinkedHashSet<>();

  Section(String file, String path, ObjectNode node, boolean present) {
    this.file = file;
    this.path = path;
    this.node = node;
    this.present = present;
  }

  /** Whether the file has this table. */
  boolean present() {
    return present;
  }

  boolean has(String key) {
    return node.has(key);
  }

  Section table(String key) throws ConfigRefused {
    known.add(key);
    JsonNode child = node.get(key);
    if (child == null) {
      return new Section(file, name(key), node.objectNode(), false);
    }
    if (!child.isObject()) {
      throw refuse(key, child, "a table");
    }
    return new Section(file, name(key), (ObjectNode) child, true);
  }

  /** An array of tables, at most {@code most}. */
  List<Section> tables(String key, int most) throws ConfigRefused {
    known.add(key);
    JsonNode child = node.get(key);
    List<Section> tables = new ArrayList<>();
    if (child == null) {
      return tables;
    }
    if (!child.isArray() || child.size() > most) {
      throw refuse(key, child, "at most " + most + " tables written as [[" + key + "]]");
    }
    for (JsonNode element : child) {
      if (!element.isObject()) {
        throw refuse(key, element, "tables written as [[" + key + "]]");
      }
      String path = name(key) + " number " + (tables.size() + 1);
      tables.add(new Section(file, path, (ObjectNode) element, true));
    }
    return tables;
  }

  double number(String key, double otherwise, Range range) throws ConfigRefused {
    known.add(key);
    return node.has(key) ? number(key, range) : otherwise;
  }

  double number(String key, Range range) throws ConfigRefused {
    known.add(key);
    JsonNode child = required(key, range.words());
    if (!child.isNumber() || !range.contains(child.doubleValue())) {
      throw refuse(key, child, range.words());
    }
    return child.doubleValue();
  }

  /** An array of exactly {@code count} numbers. */
  double[] numbers(String key, int count) throws ConfigRefused {
    known.add(key);
    String accepted = "[" + count + " numbers]";
    JsonNode child = required(key, accepted);
    double[] numbers = new double[count];
    boolean fits = child.isArray() && child.size() == count;
    for (int i = 0; fits && i < count; i++) {
      numbers[i] = child.get(i).doubleValue();
      fits = child.get(i).isNumber() && Double.isFinite(numbers[i]);
    }
    if (!fits) {
      throw refuse(key, child, accepted);
    }
    return numbers;
  }

  int whole(String key, int otherwise, int min, int max) throws ConfigRefused {
    return (int) whole(key, (long) otherwise, min, max);
  }

  long whole(String key, long otherwise, long min, long max) throws ConfigRefused {
    known.add(key);
    JsonNode child = node.get(key);
    if (child == null) {
      return otherwise;
    }
    boolean fits = child.isIntegralNumber() && child.canConvertToLong();
    if (!fits || child.longValue() < min || child.longValue() > max) {
      throw refuse(key, child, "a whole number from " + min + " to " + max);
    }
    return child.longValue();
  }

  boolean flag(String key, boolean otherwise) throws ConfigRefused {
    known.add(key);
    JsonNode child = node.get(key);
    if (child == null) {
      return otherwise;
    }
    if (!child.isBoolean()) {
      throw refuse(key, child, "true or false");
    }
    return child.booleanValue();
  }

  String text(String key, String otherwise) throws ConfigRefused {
    known.add(key);
    return node.has(key) ? text(key) : otherwise;
  }

  String text(String key) throws ConfigRefused {
    known.add(key);
    JsonNode child = required(key, "a text");
    if (!child.isTextual() || child.textValue().length() > MAX_TEXT) {
      throw refuse(key, child, "a text of at most " + MAX_TEXT + " characters");
    }
    return child.textValue();
  }

  /** An array of texts, at most {@code most}; empty where the key is not there. */
  List<String> texts(String key, int most) throws ConfigRefused {
    known.add(key);
    JsonNode child = node.get(key);
    List<String> texts = new ArrayList<>();
    if (child == null) {
      return texts;
    }
    boolean fits = child.isArray() && child.size() <= most;
    for (int i = 0; fits && i < child.size(); i++) {
      fits = child.get(i).isTextual() && child.get(i).textValue().length() <= MAX_TEXT;
      texts.add(child.get(i).asText());
    }
    if (!fits) {
      throw refuse(key, child, "at most " + most + " texts, such as [\"…\", \"…\"]");
    }
    return texts;
  }

  String oneOf(String key, String otherwise, List<String> accepted) throws ConfigRefused {
    String found = text(key, otherwise);
    if (!accepted.contains(found)) {
      throw refuse(key, "'" + found + "'", alternatives(accepted));
    }
    return found;
  }

  String oneOf(String key, List<String> accepted) throws ConfigRefused {
    known.add(key);
    required(key, alternatives(accepted));
    return oneOf(key, "", accepted);
  }

  /** Names a folder or file; empty where the key is not there. */
  Map<String, JsonNode> unread() {
    Map<String, JsonNode> rest = new LinkedHashMap<>();
    node.properties()
        .forEach(
            e -> {
              if (!known.contains(e.getKey())) {
                rest.put(e.getKey(), e.getValue());
              }
            });
    return rest;
  }

  /** Refuses keys nobody asked for. */
  void done() throws ConfigRefused {
    for (Map.Entry<String, JsonNode> rest : unread().entrySet()) {
      throw ConfigRefused.key(
          file,
          "unknown key " + name(rest.getKey()),
          shown(rest.getValue()),
          known.isEmpty() ? "no key here" : alternatives(List.copyOf(known)));
    }
  }

  ConfigRefused refuse(String key, String found, String accepted) {
    return ConfigRefused.key(file, name(key), found, accepted);
  }

  private ConfigRefused refuse(String key, JsonNode found, String accepted) {
    return refuse(key, shown(found), accepted);
  }

  private JsonNode required(String key, String accepted) throws ConfigRefused {
    JsonNode child = node.get(key);
    if (child == null) {
      throw refuse(key, "nothing", accepted);
    }
    return child;
  }

  private String name(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  private static String shown(JsonNode found) {
    String text = found.isTextual() ? "'" + found.textValue() + "'" : found.toString();
    String line = text.replace('\n', ' ');
    return line.length() > 60 ? line.substring(0, 57) + "..." : line;
  }

  private static String alternatives(List<String> words) {
    return words.size() == 1
        ? words.get(0)
        : words.subList(0, words.size() - 1).stream().collect(Collectors.joining(", "))
            + " or "
            + words.get(words.size() - 1);
  }
}
