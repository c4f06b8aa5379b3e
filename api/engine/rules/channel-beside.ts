import type { Cable } from '#model/cable.ts';
import { channelTakes } from '../ways/channel-fill.ts';
import { besideChannel, type FoundChannel, foundChannels } from '../ways/found-channels.ts';
import type { Run } from '../ways/run.ts';
import { counted } from './counted.ts';
import type { Facts } from './facts.ts';
import { type CheckResult, rule } from './rule.ts';
import { metres } from './wiring.ts';

type Message = 'within' | 'overfull' | 'sizeUnknown' | 'besideFits' | 'besideFull' | 'besideUnknown';

/** New channel that would lie on channel found is set off or saved, and what goes into the one found has room there. */
export const channelBeside = rule<Message>({
  id: 'CH1',
  title: 'Channel beside channel found',
  source: 'IET On-Site Guide Appendix E (45 % space factor), by one maker’s capacities; common practice',
  messages: {
    within: 'The cable lies in the channel found for {length} m: {cables} in {size} mm, within 45 %.',
    overfull:
      'The cable is to lie in the channel found for {length} m: {cables} in {size} mm are more than 45 %.',
    sizeUnknown:
      'The cable is to lie in the channel found for {length} m, with {cables} in all; the size of that channel is not known.',
    besideFits:
      'New channel would lie on the channel found for {length} m and has to be set off from it. The one found, {size} mm, takes the cable as well: {cables} within 45 %.',
    besideFull:
      'New channel would lie on the channel found for {length} m and has to be set off from it: the one found, {size} mm, does not take {cables} within 45 %.',
    besideUnknown:
      'New channel would lie on the channel found for {length} m and has to be set off from it. Nobody has said how large the one found is.',
  },
  remedies: {
    overfull: 'Set a new channel off from it, or exchange the one found for a larger one.',
    sizeUnknown: 'Measure it, width by depth, and count what lies in it.',
    besideFits:
      'Say of the cable found that new cable goes into its channel, as long as cables that lie together may carry what they must.',
    besideUnknown: 'Measure it, width by depth; it may take the cable.',
  },
  // The space factor is guidance: what cables may carry side by side is checked apart.
  couldFail: false,
  check: (facts) => {
    const channels = foundChannels(facts.job.legs, facts.foundRuns);
    return channels.length === 0 ? [] : facts.runs.flatMap((run) => ofRun(facts, channels, run));
  },
});

function ofRun(facts: Facts, channels: readonly FoundChannel[], run: Run): readonly CheckResult<Message>[] {
  const legIds = [...new Set(channels.map(({ legId }) => legId))];
  return legIds.flatMap((legId) => {
    const ofLeg = channels.filter((channel) => channel.legId === legId);
    const insideMm = sum(run.segments.map((each) => (each.inChannelOf === legId ? each.lengthMm : 0)));
    const besideMm = sum(
      run.segments.flatMap((each) => (each.bundle === null ? besideEach(each, ofLeg) : [])),
    );
    const [channel] = ofLeg;
    if (channel === undefined || (insideMm === 0 && besideMm === 0)) return [];
    return [insideMm > 0 ? inside(facts, channel, run, insideMm) : beside(facts, channel, run, besideMm)];
  });
}

const besideEach = (segment: Run['segments'][number], channels: readonly FoundChannel[]): readonly number[] =>
  channels.map((channel) => {
    const along = besideChannel(segment, channel);
    return along === null ? 0 : along.toMm - along.fromMm;
  });

const sum = (numbers: readonly number[]): number => numbers.reduce((so, each) => so + each, 0);

/** The cables that lie in a channel when all is done, those found and those that are laid in. */
function cablesIn({ job, foundRuns, runs }: Facts, { legId, bundle }: FoundChannel): readonly Cable[] {
  const there = job.legs
    .map(({ id }) => foundRuns.get(id))
    .filter((run) => run !== undefined && (run.legId === legId || isIn(run, bundle)));
  return [...there, ...runs.filter((run) => isIn(run, bundle))].flatMap((run) => run?.cable ?? []);
}

const isIn = ({ segments }: Run, bundle: string): boolean => segments.some((each) => each.bundle === bundle);

function inside(facts: Facts, channel: FoundChannel, run: Run, lengthMm: number): CheckResult<Message> {
  const { said, takes } = room(channel, cablesIn(facts, channel), run, lengthMm);
  if (takes === null) return { ...said, outcome: 'not-proven', messageId: 'sizeUnknown' };
  return takes
    ? { ...said, outcome: 'passes', messageId: 'within' }
    : { ...said, outcome: 'decide', messageId: 'overfull' };
}

function beside(facts: Facts, channel: FoundChannel, run: Run, lengthMm: number): CheckResult<Message> {
  const { said, takes } = room(channel, [...cablesIn(facts, channel), run.cable], run, lengthMm);
  if (takes === null) return { ...said, outcome: 'advice', messageId: 'besideUnknown' };
  return takes
    ? { ...said, outcome: 'advice', messageId: 'besideFits' }
    : { ...said, outcome: 'passes', messageId: 'besideFull' };
}

/** What is said of a run and the cables in a channel, and whether that takes them; null where its size is not known. */
function room({ size }: FoundChannel, cables: readonly Cable[], run: Run, lengthMm: number) {
  const length = metres(lengthMm);
  const values = { length, cables: counted(cables.length, 'cable'), size: words(size) };
  const said = { subjectId: run.id, origin: 'scheme', unit: 'm', actual: length, values } as const;
  return { said, takes: size === null ? null : channelTakes(size, cables) };
}

const words = (size: FoundChannel['size']): string => size?.replace('x', ' × ') ?? 'not known';
