const plastered = { finish: 'plaster', lining: 'none' };

function wall(id: string, from: readonly number[], to: readonly number[], external: boolean) {
  return {
    id,
    from,
    to,
    thicknessMm: external ? 300 : 100,
    core: external ? 'brick' : 'block',
    external,
    faces: { left: plastered, right: external ? { finish: 'bare', lining: 'none' } : plastered },
    openings: [] as object[],
  };
}

function ground() {
  const walls = [
    wall('w-south-1', [0, 0], [4000, 0], true),
    wall('w-south-2', [4000, 0], [7000, 0], true),
    wall('w-east', [7000, 0], [7000, 3000], true),
    wall('w-north-2', [7000, 3000], [4000, 3000], true),
    wall('w-north-1', [4000, 3000], [0, 3000], true),
    wall('w-west', [0, 3000], [0, 0], true),
    wall('w-middle', [4000, 0], [4000, 3000], false),
  ];
  walls[6]?.openings.push({
    id: 'o-door',
    kind: 'door',
    alongMm: 2000,
    widthMm: 800,
    sillMm: 0,
    headMm: 2040,
  });
  return {
    id: 's-ground',
    name: 'Ground floor',
    floorLevelMm: 0,
    heightMm: 2400,
    floor: { build: 'suspended-timber', voidMm: 300, joistDepthMm: 200, joistsRunDeg: 0, covering: 'carpet' },
    ceiling: { lining: 'plasterboard', loft: false },
    walls,
    rooms: [
      {
        id: 'r-living',
        name: 'Living room',
        use: 'living',
        block: 'main',
        walls: [
          { wall: 'w-south-1', side: 'left' },
          { wall: 'w-middle', side: 'left' },
          { wall: 'w-north-1', side: 'left' },
          { wall: 'w-west', side: 'left' },
        ],
      },
      {
        id: 'r-kitchen',
        name: 'Kitchen',
        use: 'kitchen',
        block: 'main',
        walls: [
          { wall: 'w-south-2', side: 'left' },
          { wall: 'w-east', side: 'left' },
          { wall: 'w-north-2', side: 'left' },
          { wall: 'w-middle', side: 'right' },
        ],
        floor: { build: 'solid', voidMm: 0, covering: 'tile', heated: false },
      },
    ],
    fixtures: [
      {
        id: 'f-sink',
        kind: 'sink',
        outline: [
          [6000, 0],
          [6800, 0],
          [6800, 500],
          [6000, 500],
        ],
        toMm: 900,
      },
    ],
    stairwells: [
      [
        [0, 2000],
        [900, 2000],
        [900, 3000],
        [0, 3000],
      ],
    ],
    underlay: {
      asset: 'a-sketch',
      at: [0, 0],
      widthPx: 800,
      heightPx: 600,
      scaleMmPerPx: 5,
      angleDeg: 0,
      opacity: 0.5,
    },
  };
}

function onWall(wallId: string, alongMm: number, heightMm = 450) {
  return { wall: wallId, side: 'left', alongMm, heightMm };
}

function socket(id: string, label: string, place: object) {
  return {
    id,
    label,
    status: 'existing',
    circuit: 'c-ring',
    kind: 'socket-twin',
    place,
    mount: 'flush',
    features: [] as string[],
    photos: [] as string[],
  };
}

const wanted = {
  ...socket('p-wanted', 'Living room, north wall', onWall('w-north-1', 1500)),
  status: 'wanted',
  circuit: undefined,
};

function points() {
  return [
    { ...socket('p-one', 'Living room, south wall', onWall('w-south-1', 1000)), photos: ['a-photo'] },
    {
      ...socket('p-two', 'Kitchen, worktop', onWall('w-east', 1500, 1100)),
      asFound: { cablesSeen: 3, boxDepthMm: 35, slackMm: 150, colours: 'old', lugs: true, role: 'ring' },
      certainty: { box: 'assumed' },
    },
    socket('p-three', 'Kitchen, north wall', onWall('w-north-2', 1000)),
    {
      ...socket('p-spur', 'Kitchen, by the door', { storey: 's-ground', at: [4100, 400], heightMm: 450 }),
      kind: 'socket-single',
    },
    wanted,
  ];
}

const twin = { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 };

function legs() {
  const leg = (id: string, from: object, to: object, lengthMm: number) => ({
    id,
    circuit: 'c-ring',
    from,
    to,
    cable: twin,
    lengthMm,
    certainty: { length: 'assumed', route: 'unknown' },
  });
  return [
    leg('l-one', { origin: 'c-ring', end: 'A' }, { point: 'p-one' }, 6000),
    leg('l-two', { point: 'p-one' }, { point: 'p-two' }, 9000),
    {
      ...leg('l-three', { point: 'p-two' }, { point: 'p-three' }, 5000),
      via: [
        {
          storey: 's-ground',
          at: [6900, 2900],
          heightMm: 2300,
          medium: 'void-across',
          wall: 'w-east',
          side: 'left',
        },
      ],
    },
    leg('l-four', { point: 'p-three' }, { origin: 'c-ring', end: 'B' }, 8000),
    leg('l-spur', { point: 'p-two' }, { point: 'p-spur' }, 4000),
  ];
}

function readings() {
  const before = { circuit: 'c-ring', phase: 'before' };
  return [
    {
      id: 'd-loop',
      ...before,
      kind: 'loop',
      loop: 'L-cpc',
      from: 'crossed',
      at: 'p-one',
      linkedAt: 'b-main',
      ohm: 0.4,
    },
    { id: 'd-insulation', ...before, kind: 'insulation', between: 'LN-cpc', megohm: 200, testV: 500 },
    { id: 'd-zs', ...before, kind: 'zs', at: 'p-three', ohm: 0.75, takenOn: '2025-03-31' },
    { id: 'd-ze', phase: 'before', kind: 'ze', at: 'b-main', ohm: 0.35 },
    { id: 'd-pfc', phase: 'before', kind: 'pfc', kA: 1.2 },
    { id: 'd-rcd', ...before, kind: 'rcd', mA: 30, ms: 24 },
    { id: 'd-polarity', ...before, kind: 'polarity', at: 'p-two', ok: true },
  ];
}

function schemes() {
  const schemeOf = (id: string, name: string, connections: readonly object[]) => ({
    id,
    name,
    connections,
    remedies: [] as object[],
    locks: [] as string[],
  });
  return [
    {
      ...schemeOf('k-spur', 'Unfused spur from the living room', [
        {
          id: 'n-spur',
          kind: 'spur',
          from: { point: 'p-one' },
          to: 'p-wanted',
          cable: twin,
          runs: [
            {
              from: { point: 'p-one' },
              to: { point: 'p-wanted' },
              via: [{ storey: 's-ground', at: [2000, 1500], heightMm: -100, medium: 'void-along' }],
            },
          ],
        },
      ]),
      remedies: [
        { kind: 'bond-upgrade', at: 'water' },
        { kind: 're-box', at: 'p-one' },
      ],
      locks: ['n-spur'],
    },
    schemeOf('k-fused', 'Fused spur', [
      {
        id: 'n-fused',
        kind: 'fused-spur',
        from: {
          leg: 'l-two',
          alongMm: 3000,
          joint: { kind: 'maintenance-free', ratingA: 32, accessible: false },
        },
        unit: { fuseA: 13, place: onWall('w-south-1', 1400) },
        feeds: [{ from: 'unit', to: 'p-wanted' }],
      },
    ]),
    schemeOf('k-extension', 'Ring extension', [
      {
        id: 'n-extension',
        kind: 'ring-extension',
        circuit: 'c-ring',
        between: [{ point: 'p-one' }, { point: 'p-two' }],
        leg: 'l-two',
        out: { how: 'terminals' },
        back: { how: 'joint', alongMm: 2000, joint: { kind: 'lever', ratingA: 32, accessible: true } },
        through: ['p-wanted'],
      },
    ]),
    schemeOf('k-radial', 'New radial', [
      {
        id: 'n-radial',
        kind: 'radial',
        board: 'b-main',
        device: { standard: 'BS-EN-61009', curve: 'B', ratingA: 20, rcd: { type: 'A', mA: 30 } },
        feeds: [{ from: 'origin', to: 'p-wanted' }],
      },
    ]),
    schemeOf('k-down', 'Existing spur fused down', [
      {
        id: 'n-down',
        kind: 'fuse-down',
        leg: 'l-spur',
        alongMm: 500,
        unit: { fuseA: 13 },
        feeds: [{ from: 'p-spur', to: 'p-wanted' }],
      },
    ]),
    schemeOf('k-closed', 'Existing spur closed into the ring', [
      {
        id: 'n-close',
        kind: 'close-spur',
        point: 'p-spur',
        leg: 'l-three',
        back: { how: 'old-cable', alongMm: 4500 },
      },
      { id: 'n-spur', kind: 'spur', from: { point: 'p-spur' }, to: 'p-wanted' },
    ]),
  ];
}

/**
 * A small sound job as a file holds it, fresh at each call: two rooms, a ring of three sockets with one spur, one
 * wanted socket, and one scheme for every kind of connection.
 */
export function smallJob(): Record<string, unknown> {
  const job = {
    format: 'ringwright-job',
    version: 1,
    id: 'j-small',
    reference: 'SMALL-1',
    title: 'One more socket in the living room',
    edition: 'BS 7671:2018+A2:2022',
    site: {
      customer: 'A Customer',
      address: ['1 Invented Street'],
      nation: 'england',
      premises: 'house',
      surveyedOn: '2025-03-31',
    },
    storeys: [ground()],
    supply: {
      earthing: 'TN-C-S',
      zeOhm: 0.35,
      nominalV: 230,
      bonding: [{ service: 'water', mm2: 10, seen: true }],
      otherSources: [],
    },
    boards: [
      {
        id: 'b-main',
        label: 'Consumer unit',
        place: { storey: 's-ground', at: [200, 200], heightMm: 2000 },
        ways: 8,
        spareWays: 2,
        rcds: [{ id: 'g-rcd', type: 'A', mA: 30, ratingA: 63 }],
        rcboAvailable: true,
      },
    ],
    circuits: [
      {
        id: 'c-ring',
        name: 'Sockets',
        board: 'b-main',
        way: '3',
        use: 'sockets',
        shape: 'ring',
        device: { standard: 'BS-EN-60898', curve: 'B', ratingA: 32, breakingKA: 6 },
        upstreamRcd: 'g-rcd',
        colours: 'old',
        certainty: { order: 'measured' },
      },
    ],
    points: points(),
    legs: legs(),
    readings: readings(),
    answers: [{ question: 'asbestos', value: 'no', certainty: 'seen' }],
    schemes: schemes(),
    terms: { labour: 'typical', markupPercent: 20, contingencyPercent: 5, vat: 'standard', validDays: 30 },
    stock: [{ item: 'back-box-35-2', quantity: 1 }],
    assets: [
      { id: 'a-photo', name: 'south wall.jpg', mediaType: 'image/jpeg', bytes: 120_000 },
      { id: 'a-sketch', name: 'sketch.png', mediaType: 'image/png', bytes: 80_000 },
    ],
  };
  // Through text and back, as a file would: nothing is shared between two calls, and `undefined` is gone.
  return JSON.parse(JSON.stringify(job));
}
