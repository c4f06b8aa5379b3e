import type { ConnectionKind } from '#model/scheme.ts';

/** What a connection is called by its kind; the same on the screen, the plan and the papers. */
export const connectionKindWords: Readonly<Record<ConnectionKind, string>> = {
  spur: 'Spur',
  'fused-spur': 'Fused spur',
  'ring-extension': 'Ring extension',
  radial: 'New radial',
  'fuse-down': 'Spur fused down',
  'close-spur': 'Spur closed into the ring',
};
