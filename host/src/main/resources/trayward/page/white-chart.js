// Temperature traces over time from `in`, with marks; zoomed by dragging or by buttons. Drawn by the vendored uPlot.
import { clock, h, isNumber, list, num } from './white-dom.js';

// Told apart by dash as well as by colour.
const LINES = [
  { stroke: '#0b4f6c' },
  { stroke: '#a33b00', dash: [10, 4] },
  { stroke: '#4b5d16', dash: [3, 3] },
  { stroke: '#6a2c70', dash: [12, 4, 3, 4] },
];
const INK = '#2b2823';

/** The rows of a trace: [[t_s, …], [bath_c, …], [set_c, …]]; a reading that is not valid is null. */
export function traceOf(csv) {
  const [head, ...rows] = csv.trim().split('\n').map((line) => line.trim().split(','));
  const column = (name) => head.indexOf(name);
  const cell = (row, at) => (at < 0 || row[at] === undefined || row[at] === '' ? null : Number(row[at]));
  const take = (name) => rows.map((row) => cell(row, column(name)));
  return [take('t_s'), take('bath_c'), take('set_c')];
}

/** The same with empty readings where a mark lies before its first or after its last one. */
function reaching(trace, marks) {
  const [times, ...values] = trace;
  const at = marks.map((m) => m.elapsed_s).filter(isNumber).sort((a, b) => a - b);
  const before = at.filter((t) => t < times[0]);
  const after = at.filter((t) => t > times[times.length - 1]);
  return [[...before, ...times, ...after], ...values.map((v) => [...before.map(() => null), ...v, ...after.map(() => null)])];
}

/** Vertical lines with their words, for marks. */
function marksDrawn(marks) {
  return (u) => {
    const { ctx } = u;
    const scale = window.devicePixelRatio || 1;
    ctx.save();
    ctx.font = 12 * scale + 'px system-ui, sans-serif';
    ctx.lineWidth = scale;
    ctx.textAlign = 'left';
    ctx.textBaseline = 'alphabetic';
    marks.forEach((mark, i) => {
      if (!isNumber(mark.elapsed_s)) return;
      const x = u.valToPos(mark.elapsed_s, 'x', true);
      if (x < u.bbox.left || x > u.bbox.left + u.bbox.width) return;
      ctx.strokeStyle = ctx.fillStyle = mark.stroke || INK;
      ctx.setLineDash([4 * scale, 3 * scale]);
      ctx.beginPath();
      ctx.moveTo(x, u.bbox.top);
      ctx.lineTo(x, u.bbox.top + u.bbox.height);
      ctx.stroke();
      const text = mark.kind + ' ' + clock(mark.elapsed_s);
      const wide = ctx.measureText(text).width + 6 * scale;
      const left = x + wide > u.bbox.left + u.bbox.width;
      const at = [text, left ? x - wide : x + 4 * scale, u.bbox.top + (14 + 15 * (i % 12)) * scale];
      ctx.setLineDash([]);
      ctx.lineWidth = 4 * scale; // the paper around the words, so that no line runs through them
      ctx.strokeStyle = '#fffdf9';
      ctx.strokeText(...at);
      ctx.lineWidth = scale;
      ctx.fillText(...at);
    });
    ctx.restore();
  };
}

const NEAR_K = 3; // a set temperature further off would press the bath's line flat

function nearby([, bath, set]) {
  const warm = bath.filter(isNumber);
  const wanted = set.filter(isNumber);
  return warm.length > 0 && wanted.every((s) => Math.abs(s - warm[0]) <= NEAR_K || Math.abs(s - warm[warm.length - 1]) <= NEAR_K);
}

/** Shows at least a kelvin, so that noise does not look like drift. */
function temperatures(u, low, high) {
  if (!isNumber(low) || !isNumber(high)) return [15, 50];
  const middle = (low + high) / 2;
  const half = Math.max(0.5, (high - low) * 0.6);
  return [middle - half, middle + half];
}

/**
 * A chart of traces: `lines` is a list of { name, trace: [t, bath], marks }, each over time from its own `in`; `set` of
 * the first is shown where there is one line alone.
 */
export function chart(lines, label) {
  const one = lines.length === 1;
  const tables = lines.map((l) => reaching(one ? l.trace : l.trace.slice(0, 2), list(l.marks)));
  const data = one ? tables[0] : window.uPlot.join(tables);
  const line = (name, i) => ({
    label: name, scale: 'c', stroke: LINES[i % 4].stroke, dash: LINES[i % 4].dash, width: 2, spanGaps: !one,
    value: (u, v) => num(v, 2, '°C'), points: { show: false },
  });
  const series = [{ label: 'from in', value: (u, v) => (isNumber(v) ? clock(Math.round(v)) : '–') }, ...lines.map((l, i) => line(l.name, i))];
  if (one) series.push({ ...line('set', 1), width: 1, auto: nearby(lines[0].trace) });
  const marks = lines.flatMap((l, i) => list(l.marks).filter((m) => one || m.kind !== 'in').map((m) => (one ? m : { ...m, kind: m.kind + ' ' + l.short, stroke: LINES[i % 4].stroke })));
  const place = h('div', { class: 'chart', role: 'img', 'aria-label': label });
  const axis = { stroke: INK, grid: { stroke: '#d9d4c8', width: 1 }, ticks: { stroke: '#b8b1a2', width: 1 }, font: '13px system-ui, sans-serif' };
  const options = {
    width: 300, height: 280, series,
    scales: { x: { time: false }, c: { range: temperatures } },
    axes: [
      { ...axis, values: (u, ticks) => ticks.map((t) => clock(t)), space: 60 },
      { ...axis, scale: 'c', values: (u, ticks) => ticks.map((t) => (Number.isInteger(t) ? t : t.toFixed(1)) + ' °C'), size: 68 },
    ],
    cursor: { drag: { x: true, y: false, dist: 6 } },
    legend: { live: true },
    hooks: { draw: [marksDrawn(marks)] },
  };
  let plot = null;
  const fit = () => {
    const width = Math.floor(place.clientWidth);
    if (width < 50) return;
    if (plot) plot.setSize({ width, height: options.height });
    else plot = new window.uPlot({ ...options, width }, data, place);
  };
  new ResizeObserver(fit).observe(place);
  return h('figure', {}, place, buttons(() => plot, data[0]),
    h('figcaption', { class: 'hint' }, 'Time from in. Drag across the picture to look closer, or use the buttons.'));
}

function buttons(plot, times) {
  const ends = () => [times[0], times[times.length - 1]];
  const move = (how) => () => {
    const u = plot();
    if (!u || times.length < 2) return;
    const { min, max } = u.scales.x;
    const [first, last] = ends();
    const [low, high] = how(min, max, first, last);
    u.setScale('x', { min: Math.max(first, low), max: Math.min(last, high) });
  };
  const middle = (factor) => (min, max) => {
    const half = Math.max(1, (max - min) * factor / 2);
    return [(min + max) / 2 - half, (min + max) / 2 + half];
  };
  const along = (part) => (min, max, first, last) => {
    const by = Math.max(first - min, Math.min(last - max, (max - min) * part));
    return [min + by, max + by];
  };
  return h('p', { class: 'actions zoom' },
    press('Closer', 'look closer', move(middle(0.5))),
    press('Wider', 'look wider', move(middle(2))),
    press('←', 'earlier', move(along(-0.5))),
    press('→', 'later', move(along(0.5))),
    press('All', 'the whole trace', move((a, b, first, last) => [first, last])));
}

function press(name, words, act) {
  return h('button', { type: 'button', class: 'quiet', title: words, 'aria-label': words, onclick: act }, name);
}
