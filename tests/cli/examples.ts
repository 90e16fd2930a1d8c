/** The readings of the contract's example of `measure`. */
export const readings = {
  seenFrom: 'from the saloon, looking forward',
  readings: [
    { id: 'wb', kind: 'distance', from: 'BL', to: 'BR', value: 641, sigma: 0.5 },
    { id: 'wt', kind: 'distance', from: 'TL', to: 'TR', value: 635, sigma: 0.5 },
    { id: 'hl', kind: 'distance', from: 'BL', to: 'TL', value: 1746, sigma: 0.5 },
    { id: 'hr', kind: 'distance', from: 'BR', to: 'TR', value: 1752, sigma: 0.5 },
    { id: 'd1', kind: 'distance', from: 'BL', to: 'TR', value: 1868, sigma: 0.5 },
    { id: 'd2', kind: 'distance', from: 'BR', to: 'TL', value: 1855, sigma: 0.5 },
    {
      id: 'w13',
      kind: 'width',
      left: ['BL', 'TL'],
      right: ['BR', 'TR'],
      at: 0.3333333,
      value: 639,
      sigma: 0.5,
    },
    {
      id: 'w23',
      kind: 'width',
      left: ['BL', 'TL'],
      right: ['BR', 'TR'],
      at: 0.6666667,
      value: 637,
      sigma: 0.5,
    },
    { id: 'pl', kind: 'plumb', from: 'BL', to: 'TL', value: 14, sigma: 1 },
    { id: 'pr', kind: 'plumb', from: 'BR', to: 'TR', value: 8, sigma: 1 },
    { id: 'ls', kind: 'level', from: 'BL', to: 'BR', value: 0, sigma: 1 },
    { id: 'lh', kind: 'level', from: 'TL', to: 'TR', value: 6, sigma: 1 },
  ],
};

/** The job of the contract's example of `cut`. */
export const job = {
  kerf: 3,
  trim: { left: 10, right: 0, bottom: 10, top: 0 },
  cuts: {
    style: 'guillotine',
    maxStages: null,
    exact: false,
    firstCut: 'either',
    maxRip: null,
    maxCut: null,
  },
  stock: [
    {
      id: 'ply',
      length: 2440,
      width: 1220,
      cost: 78,
      count: null,
      keepOut: [{ x: 0, y: 0, length: 50, width: 20 }],
    },
  ],
  parts: [{ id: 'A1', length: 700, width: 300, count: 2, turn: false }],
  keepLeftover: { minLength: 300, minWidth: 100 },
};

/** The readings with one of them changed. */
export function withReading(id: string, value: number): typeof readings {
  return {
    ...readings,
    readings: readings.readings.map((reading) => (reading.id === id ? { ...reading, value } : reading)),
  };
}
