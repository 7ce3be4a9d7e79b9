package trayward.host.store;

/**
 * How much is in a log. Immutable.
 *
 * @param sessions sessions, an open one included
 * @param prints prints, without those whose every mark was taken back
 * @param marks marks, without those taken back
 * @param marksUndone marks taken back
 * @param baths baths
 * @param additions additions
 * @param events events
 * @param traceSamples samples of the trace
 */
public record LogCounts(
    long sessions,
    long prints,
    long marks,
    long marksUndone,
    long baths,
    long additions,
    long events,
    long traceSamples) {}
