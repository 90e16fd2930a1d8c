import type { Tools } from './types.ts';

/** Tools of a new project: kerfs of joinery 0.6; trims of E1 and D4, leftovers of E5 and router of 0.6, all common practice. */
export const defaultTools: Tools = {
  sheetSaw: {
    id: 'track-saw',
    name: 'Track saw',
    kerf: 2.2,
    trim: { left: 10, bottom: 10 },
    cuts: { style: 'guillotine' },
  },
  boardSaw: {
    id: 'table-saw',
    name: 'Table saw',
    kerf: 3,
    trim: { left: 40, right: 40 },
    cuts: { style: 'guillotine' },
  },
  router: { cutter: 6, passDepth: 4 },
  keepLeftover: { minLength: 300, minWidth: 100 },
};
