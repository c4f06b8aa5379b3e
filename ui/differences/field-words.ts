import { termNames } from '#engine/price/term-names.ts';
import { pounds } from '../written.ts';

/** Fields whose words are not simply their name taken apart. */
const words: Readonly<Record<string, string>> = {
  ...termNames,
  alongMm: 'distance along the wall',
  asFound: 'as found',
  caption: 'what it shows',
  certainty: 'how sure',
  channel: 'channel it lies in',
  cpcMm2: 'protective conductor',
  earthingMm2: 'earthing conductor',
  floorLevelMm: 'level of the floor',
  from: 'first end',
  to: 'other end',
  kind: 'what it is',
  label: 'label',
  takes: 'what it takes',
  underlay: 'picture under the plan',
  lineMm2: 'line conductor',
  shallowBox: 'remedy for a box too shallow',
  locks: 'connections held fast',
  mm2: 'size',
  ohm: 'reading',
  materialsPence: 'materials',
  megohm: 'reading',
  ms: 'trip time',
  ok: 'result',
  mA: 'trips at',
  delayed: 'delayed, type S',
  notTested: 'what could not be tested',
  kA: 'reading',
  pfcKA: 'prospective fault current',
  place: 'where',
  pricePence: 'price',
  ratePencePerHour: 'hourly rate',
  rateBasis: 'what the hourly rate is',
  pencePerDay: 'overhead a day',
  hoursPerDay: 'hours charged in a day',
  factor: 'minutes times',
  status: 'found or wanted',
  value: 'answer',
  via: 'way',
  runs: 'way pinned by hand',
  watts: 'load',
  zdbOhm: 'Zs at the board',
  zeOhm: 'Ze',
};

/** Units that a field's name ends in, the longer before the shorter. */
const units: readonly (readonly [ending: RegExp, written: (value: number) => string])[] = [
  [/(?:Pence|^pence)(?:PerHour)?$/, pounds],
  [/(?:Mm2|^mm2)$/, (value) => `${value} mm²`],
  [/M2$/, (value) => `${value} m²`],
  [/A2s$/, (value) => `${value} A²s`],
  [/Mm$/, (value) => `${value} mm`],
  [/(?:Megohm|^megohm)$/, (value) => `${value} MΩ`],
  [/(?:Ohm|^ohm)$/, (value) => `${value} Ω`],
  [/(?:KA|^kA)$/, (value) => `${value} kA`],
  [/^mA$/, (value) => `${value} mA`],
  [/A$/, (value) => `${value} A`],
  [/V$/, (value) => `${value} V`],
  [/W$|^watts$/, (value) => `${value} W`],
  [/^ms$/, (value) => `${value} ms`],
  [/Percent$/, (value) => `${value} %`],
  [/Min$/, (value) => `${value} min`],
  [/Hours$/, (value) => `${value} h`],
  [/Days$/, (value) => `${value} days`],
  [/Deg$/, (value) => `${value}°`],
  [/C$/, (value) => `${value} °C`],
];

const endings = /(?:Pence|Mm2|A2s|M2|Mm|Ohm|KA|A|V|W|Percent|Min|Hours|Days|Deg|C)$/;

/** What a field of a file is called by people: "spare ways", "box depth". */
export function fieldWords(field: string): string {
  const known = words[field];
  if (known !== undefined) return known;
  const bare = field.replace(endings, '') || field;
  return bare.replace(/([a-z\d])([A-Z])/g, (_, before, after) => `${before} ${after.toLowerCase()}`);
}

/** A number of a field with the unit that the field's name ends in. */
export function numberWords(field: string, value: number): string {
  const unit = units.find(([ending]) => ending.test(field));
  return unit === undefined ? String(value) : unit[1](value);
}
