/**
 * The planners as command line and page ask them: a table of options, and one answer as text and
 * for machines. What is computed is in the domain packages.
 */
@NullMarked
package trayward.host.report.plan;

import org.jspecify.annotations.NullMarked;
