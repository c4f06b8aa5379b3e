import type { ConnectionSheet } from '#engine/work/connection-place.ts';

/** "31 March 2004". */
const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

function dayOf(iso: string): string {
  const [year, month, day] = iso.split('-').map(Number);
  return `${day} ${monthNames[(month ?? 1) - 1]} ${year}`;
}

/** What colours meant and mean, with their days, and those that changed their meaning; a sentence each, none where only new colours are met. */
export function oldToNew({ meetsOldColours, colours, mistaken }: ConnectionSheet): readonly string[] {
  if (!meetsOldColours) return [];
  return [
    ...colours.map(({ line, neutral, earth, firstDay, lastDay }) => {
      const from = firstDay === null ? '' : ` from ${dayOf(firstDay)}`;
      const to = lastDay === null ? '' : ` until ${dayOf(lastDay)}`;
      return `Fixed wiring${from}${to}: line ${line}, neutral ${neutral}, earth ${earth}; bare earths are sleeved.`;
    }),
    ...mistaken.map(
      ({ colour, old, now }) => `Danger: ${colour} was the ${old} in old cable, and is the ${now} in new.`,
    ),
    'Old cores need no new marks where they are told apart by themselves; earths of plain green sleeve get green-yellow.',
  ];
}
