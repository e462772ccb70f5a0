// Compares the first and last day of generated EDTF expressions with the npm package edtf (pinned in package.json).
// Each disagreement must be one of the justified differences below, and each of these must be met at least once, so
// that the list stays as short as it can be.
// Usage: node compare_edtf.mjs EDTF_DUMP COUNT
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

// Their own sampler, on a repeatable Math.random, which it takes over when it is loaded.
let state = 1;
Math.random = () => {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 2 ** 32;
};
let edtf, sample;
try {
  edtf = (await import('edtf')).default;
  ({ sample } = await import('edtf/sample'));
} catch {
  console.log('skipped: the npm package edtf is not installed (npm ci in tests/reference)');
  process.exit(0);
}

const [dump, countText] = process.argv.slice(2);
const count = Number(countText);
const folder = dirname(fileURLToPath(import.meta.url));

const inInterval = (text) => text.includes('/');
const inSet = (text) => /^[[{]/.test(text);
const unspecified = (text) => text.includes('X');
const qualified = (text) => /[?~%]/.test(text);
const negative = (text) => /(^|[[{,/.])[?~%]?Y?-/.test(text);
const season = (text, codes = '2[1-9]|3\\d|4[01]') => new RegExp(`-[?~%]?(${codes})[?~%]?(?![\\dX-])`).test(text);
/** The dates of an interval or set. */
const parts = (text) => text.split(/\.\.|[[\]{},/]/).filter((part) => part !== '');
const accepted = (text) => theirs(text).verdict === 'valid';

// what: 'verdict' (one of the two refuses it; ours says which) or 'days'. The first that fits is taken.
const differences = [
  { id: 'century-or-decade', what: 'verdict', ours: 'invalid', when: (text) => /^-?\d{2,3}[?~%]?$/.test(text),
    clause: 'Level 0, Date: a year is [year], four digits; decades and centuries of two or three digits are not in it' },
  { id: 'typographic-minus', what: 'verdict', ours: 'invalid', when: (text) => text.includes('\u2212'),
    clause: 'Level 0, Date and Time, example 3: a shift behind UTC is written with a hyphen' },
  { id: 'time-without-seconds', what: 'verdict', ours: 'invalid', when: (text) => /T\d\d:\d\d($|[Z+-])/.test(text),
    clause: 'Level 0, Date and Time: complete representations only' },
  { id: 'fraction-of-second', what: 'verdict', ours: 'invalid', when: (text) => /T[\d:]*[.,]\d/.test(text),
    clause: 'Level 0, Date and Time: complete representations only' },
  { id: 'basic-time-shift', what: 'verdict', ours: 'invalid', when: (text) => /T[\d:.]*[+-]\d{4}$/.test(text),
    clause: 'Extended format: colon between clock components; basic format is not permitted' },
  { id: 'time-in-interval', what: 'verdict', ours: 'invalid', when: (text) => inInterval(text) && text.includes('T'),
    clause: 'Level 0, Time Interval: time of day is excluded' },
  { id: 'no-such-day', what: 'verdict', ours: 'invalid', when: (text) => /-02[?~%]?-[?~%]?(29|30)/.test(text),
    clause: 'Level 0, Date: refers to the calendar date; the library lets 29 February run on in years 0 to 99' },
  { id: 'reversed-or-mixed-span', what: 'verdict', ours: 'invalid', when: (text) => inSet(text) && text.includes('..'),
    clause: 'Level 2, Set representation 5 to 7: all values between two of one precision, one-sided only at the ends' },
  { id: 'too-many-significant-digits', what: 'verdict', ours: 'invalid', when: (text) => /S\d+/.test(text),
    clause: 'Level 2, Significant digits: a year cannot have more than it has digits' },
  { id: 'number-with-leading-zero', what: 'verdict', ours: 'invalid', when: (text) => /Y-?0|E0/.test(text),
    clause: 'Level 1 and 2: the year exceeds four digits; the exponent is a positive integer' },
  { id: 'small-long-year', what: 'verdict', ours: 'invalid', when: (text) => /^Y-?\d{1,4}E/.test(text),
    clause: 'Level 1, Letter-prefixed calendar year: only when the year exceeds four digits' },
  { id: 'year-beyond-limit', what: 'verdict', ours: 'invalid', when: (text) => /^Y-?(\d+E\d{2,}|\d{15,})/.test(text),
    clause: 'no clause: years beyond 10^15 are refused, as days are counted in 64 bits' },

  { id: 'season-qualified-or-in-expression', what: 'verdict', ours: 'valid', when: (text) => season(text),
    clause: 'Level 1, Seasons stand in place of a month; qualification, intervals and sets hold for any date' },
  { id: 'long-or-significant-year-in-expression', what: 'verdict', ours: 'valid', when: (text) => /[YS]/.test(text),
    clause: 'Level 1 and 2: a letter-prefixed year and a year with significant digits are dates' },
  { id: 'qualified-and-unspecified', what: 'verdict', ours: 'valid',
    when: (text) => parts(text).some((part) => unspecified(part) && qualified(part) && !accepted(part)),
    clause: 'Level 2, Qualification: of any component; nothing excludes unspecified digits' },
  { id: 'qualified-in-set', what: 'verdict', ours: 'valid', when: (text) => inSet(text) && qualified(text),
    clause: 'Level 2, Set representation: members are dates; nothing excludes qualified ones' },
  { id: 'qualified-on-both-sides', what: 'verdict', ours: 'valid',
    when: (text) => parts(text).some((part) => /^[?~%]-?\d{4}[?~%]$/.test(part)),
    clause: 'Level 2, Qualification: group and individual qualification may be combined' },
  { id: 'unspecified-first-digit', what: 'verdict', ours: 'valid',
    when: (text) => parts(text).some((part) => /-X[1-9]/.test(part) && !accepted(part)),
    clause: 'Level 2, Unspecified digit: X may occur anywhere within a component' },
  { id: 'overlapping-ends', what: 'verdict', ours: 'valid', when: (text) => inInterval(text) && parts(text).every(accepted),
    clause: 'Level 0, Time Interval, examples 4 to 6, and Level 2, Interval, example 2: ends may overlap' },

  { id: 'day-of-time-shift', what: 'days', when: (text) => text.includes('T'),
    clause: 'Level 0, Date and Time: refers to the date as written; the library gives the day in UTC' },
  { id: 'southern-seasons', what: 'days', when: (text) => season(text, '29|3[0-2]'),
    clause: 'Level 2, Sub-year groupings name no months; here south is north half a year apart' },
  { id: 'quadrimester', what: 'days', when: (text) => season(text, '3[7-9]'),
    clause: 'Level 2, Sub-year groupings: a quadrimester is 4 months; the library gives it 5' },
  { id: 'significant-digits', what: 'days', when: (text) => /S\d/.test(text),
    clause: 'Level 2, Significant digits, example 1: some year between 1900 and 1999; the library gives 1950 alone' },
  { id: 'long-year', what: 'days', when: (text) => /Y/.test(text),
    clause: 'Level 1, Letter-prefixed calendar year; the library cannot compute it' },
  { id: 'unspecified-years-before-0', what: 'days', when: (text) => unspecified(text) && negative(text),
    clause: 'Level 1, Negative calendar year; the library mixes up first and last' },
  { id: 'season-before-0', what: 'days', when: (text) => negative(text) && season(text),
    clause: 'Level 1, Negative calendar year; the library ends the season in the positive year' },
  { id: 'set-order-and-spans', what: 'days', when: (text) => inSet(text) && parts(text).length > 1,
    clause: 'Level 2, Set representation 5: all the values between; the library takes first and last element as written' },
  { id: 'unspecified-ten', what: 'days', when: (text) => /-[?~%]?X0/.test(text),
    clause: 'Level 2, Unspecified digit: month X0 is October, day X0 the 10th, 20th or 30th; the library takes more' },
  { id: 'first-century', what: 'days', when: (text) => /(^|[^\d])00\d\d/.test(text),
    clause: 'Level 0, Date: year 0000 is a leap year of the proleptic Gregorian calendar' },
];

function theirs(text) {
  let value;
  try {
    value = edtf(text);
  } catch {
    return { verdict: 'invalid' };
  }
  const day = (get) => {
    try {
      const ms = get();
      if (ms === undefined || ms === null || Number.isNaN(ms)) return 'none';
      if (!Number.isFinite(ms)) return '';
      return new Date(ms).toISOString().replace(/T.*/, '').replace(/^([+-])0*(\d{4,})-/, (_, sign, year) => (sign === '-' ? '-' : '') + year + '-');
    } catch {
      return 'none';
    }
  };
  // The end of an interval that is unknown has no value: no limit.
  const end = (which) => (value.type === 'Interval' && value[which] === null ? '' : day(() => value[which === 'lower' ? 'min' : 'max']));
  return { verdict: 'valid', first: end('lower'), last: end('upper') };
}

function run(args, input) {
  const result = spawnSync(dump, args, { input, encoding: 'utf8', maxBuffer: 1 << 28 });
  if (result.status !== 0) throw new Error(result.stderr || `edtf_dump failed: ${result.error}`);
  return result.stdout.split('\n').slice(0, -1);
}

const expressions = [...new Set([...run(['--generate', String(count), '11']), ...sample({ count })])];
const ours = run([join(folder, 'edtf-policy.json')], expressions.join('\n') + '\n').map((line) => line.split('\t'));

const met = new Map(differences.map(({ id }) => [id, []]));
const unexplained = [];
let bothRefuse = 0;
let equal = 0;
for (const [text, verdict, , first, last] of ours) {
  const other = theirs(text);
  if (verdict === 'invalid' && other.verdict === 'invalid') bothRefuse += 1;
  else if (verdict === other.verdict && first === other.first && last === other.last) equal += 1;
  else {
    const what = verdict === other.verdict ? 'days' : 'verdict';
    const found = differences.find((d) => d.what === what && (what === 'days' || d.ours === verdict) && d.when(text));
    const line = `${text}: ours ${verdict} ${first}..${last}, theirs ${other.verdict} ${other.first ?? ''}..${other.last ?? ''}`;
    if (found) met.get(found.id).push(line);
    else unexplained.push(line);
  }
}

console.log(`${expressions.length} expressions: ${equal} with the same first and last day, ${bothRefuse} refused by both`);
for (const { id, clause } of differences) {
  const lines = met.get(id);
  console.log(`${String(lines.length).padStart(6)} ${id}: ${clause}${lines.length ? `\n         e.g. ${lines[0]}` : ''}`);
}
if (process.env.EDTF_VERBOSE) for (const { id } of differences) for (const line of met.get(id)) console.log(id, line);
const stale = differences.filter(({ id }) => met.get(id).length === 0).map(({ id }) => id);
if (stale.length) console.log(`justified differences that nothing shows: ${stale.join(', ')}`);
for (const line of unexplained.slice(0, 40)) console.log(`UNEXPLAINED ${line}`);
console.log(`${unexplained.length} unexplained`);
process.exit(unexplained.length || stale.length ? 1 : 0);
