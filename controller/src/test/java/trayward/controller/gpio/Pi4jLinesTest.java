package trayward.controller.gpio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.doThrow;
import static org.mockito.Mockito.spy;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import com.pi4j.exception.Pi4JException;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.gpio.digital.PullResistance;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalInput;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalInputProvider;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalOutputProvider;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import trayward.controller.port.OutputLine;

/** Single lines with their polarity, on Pi4J's own mock provider. */
class Pi4jLinesTest {

  private Context context;

  @BeforeEach
  void start() {
    context =
        Pi4J.newContextBuilder()
            .add(MockDigitalInputProvider.newInstance(), MockDigitalOutputProvider.newInstance())
            .build();
  }

  @AfterEach
  void stop() {
    context.shutdown();
  }

  private DigitalState level(String id) {
    return ((DigitalOutput) context.registry().get(id)).state();
  }

  @Test
  void anOutputRestsInactiveAndFollowsWhatIsWritten() {
    OutputLine relay = Pi4jLines.output(context, 17, "heater-relay", false);
    assertEquals(DigitalState.LOW, level("heater-relay"));
    relay.write(true);
    assertEquals(DigitalState.HIGH, level("heater-relay"));
    relay.write(false);
    assertEquals(DigitalState.LOW, level("heater-relay"));
  }

  @Test
  void anActiveLowOutputRestsHigh() {
    OutputLine relay = Pi4jLines.output(context, 27, "fan-relay", true);
    assertEquals(DigitalState.HIGH, level("fan-relay"));
    relay.write(true);
    assertEquals(DigitalState.LOW, level("fan-relay"));
  }

  @Test
  void anInputIsReadWithItsPolarity() {
    BooleanSupplier high =
        Pi4jLines.input(context, 5, "airflow", PullResistance.PULL_DOWN, false, 1000);
    BooleanSupplier low = Pi4jLines.input(context, 6, "stop", PullResistance.PULL_UP, true, 1000);
    MockDigitalInput airflow = (MockDigitalInput) context.registry().get("airflow");
    MockDigitalInput stop = (MockDigitalInput) context.registry().get("stop");
    airflow.mockState(DigitalState.HIGH);
    stop.mockState(DigitalState.HIGH);
    assertTrue(high.getAsBoolean());
    assertFalse(low.getAsBoolean());
    airflow.mockState(DigitalState.LOW);
    stop.mockState(DigitalState.LOW);
    assertFalse(high.getAsBoolean());
    assertTrue(low.getAsBoolean());
  }

  @Test
  void aLineHeldElsewhereIsToldByNumberAndName() {
    Context held = spy(context);
    doThrow(new Pi4JException("EBUSY")).when(held).create(any(DigitalOutputConfig.class));
    LineUnavailable e =
        assertThrows(
            LineUnavailable.class, () -> Pi4jLines.output(held, 17, "heater-relay", false));
    assertTrue(String.valueOf(e.getMessage()).contains("line 17 (heater-relay)"));
  }
}
