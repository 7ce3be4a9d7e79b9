'use strict';
// Traces of prints as the log keeps them: the old print that is repeated, and what the sheet in the developer had been
// through before this page opened. Each is asked for once; without an answer there is no line, and nothing else fails.
(() => {
  const { list, isNumber, markOf } = window.tray;
  const KEPT = 4;          // traces kept: the sheet's, the old one's, and those before
  const EVERY_S = 4;       // a point every so often, as fine as the picture
  const POINTS = 1800;     // two hours

  const kept = new Map();

  // One row a second: t_s,bath_c,...; an empty field is no reading.
  function points(csv) {
    const rows = csv.split('\n');
    const names = rows[0].split(',');
    const t = names.indexOf('t_s');
    const c = names.indexOf('bath_c');
    const out = [];
    let last = -Infinity;
    for (const row of rows.slice(1)) {
      const cells = row.split(',');
      const at = Number.parseFloat(cells[t]);
      const reads = Number.parseFloat(cells[c]);
      if (!isNumber(at) || at < 0 || at - last < EVERY_S || out.length >= POINTS) continue;
      out.push({ t: at, c: isNumber(reads) ? reads : null });
      last = at;
    }
    return out;
  }

  async function load(id, one) {
    const ask = (path) => fetch('/api/prints/' + id + path, { cache: 'no-store' });
    const [trace, print] = await Promise.all([
      ask('/trace.csv').then((a) => (a.ok ? a.text() : '')).catch(() => ''),
      ask('').then((a) => (a.ok ? a.json() : null)).catch(() => null),
    ]);
    const at = (kind) => markOf({ marks: list(print && print.marks) }, kind)?.elapsed_s ?? null;
    one.points = points(trace);
    one.emergence = at('emergence');
    one.pull = at('pull');
  }

  // The trace of a print, empty until it has come.
  function traceOf(id) {
    if (!kept.has(id)) {
      if (kept.size >= KEPT) kept.delete(kept.keys().next().value);
      const one = { points: [], emergence: null, pull: null };
      kept.set(id, one);
      load(id, one);
    }
    return kept.get(id);
  }

  window.trayTraces = Object.freeze({ traceOf, EVERY_S, POINTS });
})();
