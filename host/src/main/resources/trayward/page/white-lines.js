// An answer in JSON as readable lines, whatever fields it has.
import { clock, h, isNumber, short, words } from './white-dom.js';

// The unit stands last in a name.
const UNITS = [
  ['_w_per_m2_k', 'W/(m² K)'], ['_m3_per_h', 'm³/h'], ['_m2_per_l', 'm²/L'], ['_ml_per_h', 'mL/h'], ['_g_per_h', 'g/h'], ['_g_per_m3', 'g/m³'], ['_mg_per_m3', 'mg/m³'],
  ['_mg_per_h', 'mg/h'], ['_mmol_per_l', 'mmol/L'], ['_g_per_l', 'g/L'], ['_w_per_k', 'W/K'], ['_per_h', '1/h'], ['_m_per_s', 'm/s'], ['_ppm', 'ppm'], ['_cm2', 'cm²'], ['_m2', 'm²'], ['_m3', 'm³'],
  ['_min', 'min'], ['_kj', 'kJ'], ['_ml', 'mL'], ['_mm', 'mm'], ['_wh', 'Wh'], ['_pct', '%'], ['_percent', '%'], ['_c', '°C'], ['_k', 'K'], ['_l', 'L'], ['_w', 'W'], ['_s', 's'], ['_h', 'h'],
];

function named(key) {
  const found = UNITS.find(([end]) => key.endsWith(end));
  return found ? [words(key.slice(0, -found[0].length)), found[1]] : [words(key), ''];
}

function value(said, unit) {
  if (said === null) return 'none';
  if (isNumber(said)) return short(said) + (unit ? '\u00a0' + unit : '') + (unit === 's' && Math.abs(said) >= 90 ? ' (' + clock(Math.round(said)) + ')' : '');
  if (typeof said === 'boolean') return said ? 'yes' : 'no';
  if (Array.isArray(said) && said.every((v) => typeof v !== 'object')) return said.map((v) => value(v, '')).join(', ') + (said.length && unit ? '\u00a0' + unit : '');
  if (Array.isArray(said)) return h('ul', {}, said.map((v) => h('li', {}, one(v))));
  if (typeof said === 'object') return lines(said);
  return String(said);
}

/** An object within a list in one line. */
function one(said) {
  if (said === null || typeof said !== 'object' || Array.isArray(said)) return value(said, '');
  const { what, unit: all, ...rest } = said; // what it is of stands first, its unit behind each number
  const told = Object.entries(rest).map(([key, v], i) => {
    const [name, unit] = named(key);
    return [i ? '; ' : '', h('span', { class: 'name' }, name, ' '), value(v, unit || all || '')];
  }).flat();
  return what === undefined ? told : [String(what), told.length ? ': ' : '', ...told];
}

/** Every field in a line of its own. */
export function lines(answer, without = []) {
  if (answer === null || typeof answer !== 'object') return h('p', {}, String(answer));
  return h('dl', { class: 'lines' }, Object.entries(answer).filter(([key]) => !without.includes(key)).map(([key, said]) => {
    const [name, unit] = named(key);
    return h('div', {}, h('dt', {}, name), h('dd', {}, value(said, unit)));
  }));
}
