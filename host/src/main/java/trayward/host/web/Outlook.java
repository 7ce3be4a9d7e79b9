package trayward.host.web;

import java.util.Optional;
import trayward.host.forecast.Features;
import trayward.host.forecast.Forecast;
import trayward.host.forecast.Forecaster;

/**
 * The forecast as it is now. Immutable.
 *
 * @param print the print in the developer; empty before the next
 * @param elapsedS seconds since its in; 0 before
 * @param next what is waited for: emergence, or after it the pull
 * @param pull when to pull, as far as it can be told before emergence
 * @param bathC the bath, °C; NaN where not known
 * @param features what the sheet is in, or the coming one goes into
 * @param paper the paper whose prints it learned from; empty for all prints
 * @param forecaster what was learned
 */
public record Outlook(
    Optional<Long> print,
    double elapsedS,
    Forecast next,
    Optional<Forecast> pull,
    double bathC,
    Features features,
    Optional<String> paper,
    Forecaster forecaster) {}
