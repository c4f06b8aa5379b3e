import { describe, expect, it } from 'vitest';
import type { Room, Storey } from '#model/building.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { likelyRoomUse } from '../../../ui/house/room-uses.ts';

const [ground, first] = demoJob('saltglass-row').storeys;
if (ground === undefined || first === undefined) throw new Error('the demo house has two storeys');

const withRooms = (storey: Storey, uses: readonly Room['use'][]): Storey => {
  const [room] = storey.rooms;
  if (room === undefined) throw new Error('no room');
  return { ...storey, rooms: uses.map((use) => ({ ...room, use })) };
};
/** What is offered for each room, where each is taken as offered. */
const walked = (of: Storey, count: number): readonly Room['use'][] => {
  const uses: Room['use'][] = [];
  for (let i = 0; i < count; i++) {
    const storey = withRooms(of, uses);
    uses.push(likelyRoomUse([storey, of === ground ? first : ground], storey));
  }
  return uses;
};

describe('the likeliest next room', () => {
  it('is a hall at the door and a landing above it, then what houses have', () => {
    expect(walked(ground, 4)).toEqual(['hall', 'living', 'dining', 'kitchen']);
    expect(walked(first, 5)).toEqual(['landing', 'bedroom', 'bathroom', 'bedroom', 'bedroom']);
  });
  it('passes over what is there already', () => {
    expect(likelyRoomUse([ground, first], withRooms(ground, ['living']))).toBe('hall');
    expect(likelyRoomUse([ground, first], withRooms(ground, ['hall', 'kitchen']))).toBe('living');
  });
});
