import { describe, expect, test } from 'vitest';

import type { Piece } from '#core/joinery';
import type { Reading } from '#core/measuring';
import {
  applyCommand,
  newProject,
  type Command,
  type MeasuredShape,
  type ParameterValue,
  type Project,
} from '#core/project';

import { expectCommand, expectRefused } from '../../support/expect-command.ts';

const reading: Reading = { id: 'wb', kind: 'distance', from: 'BL', to: 'BR', value: 641, sigma: 0.5 };
const shape: MeasuredShape = {
  id: 'door',
  name: 'Door opening',
  kind: 'opening',
  seenFrom: 'from the saloon, looking forward',
  readings: [reading],
};
const oak = { id: 'oak', kind: 'solid', name: 'Oak', state: 'sawn' } as const;
const board = {
  id: 'oak-27',
  material: 'oak',
  form: 'board',
  length: 2400,
  width: 150,
  thickness: 27,
  count: null,
  price: 24,
} as const;
const frame: Piece = {
  id: 'frame',
  letter: 'A',
  name: 'Door frame',
  kind: 'door-frame',
  shape: 'door',
  parameters: { jambThickness: 22, materials: { frame: 'oak' } },
};
const empty = newProject('Curlew');
const project: Project = { ...empty, shapes: [shape], materials: [oak], stock: [board], pieces: [frame] };

describe('commands on the whole', () => {
  test('each changes its value and nothing else', () => {
    expectCommand(empty, { kind: 'set-name', name: 'Wren' }, (p) => ({ ...p, name: 'Wren' }));
    expectCommand(empty, { kind: 'set-paper', paper: 'Letter' }, (p) => ({ ...p, paper: 'Letter' }));
    expectCommand(empty, { kind: 'set-units', units: 'inch' }, (p) => ({ ...p, units: 'inch' }));
    expectCommand(empty, { kind: 'set-currency', currency: 'GBP', pricesIncludeTax: false }, (p) => ({
      ...p,
      currency: 'GBP',
      pricesIncludeTax: false,
    }));
    expectCommand(empty, { kind: 'change-settings', settings: { film: 0.2 } }, (p) => ({
      ...p,
      settings: { ...p.settings, film: 0.2 },
    }));
    expectCommand(empty, { kind: 'change-tools', tools: { router: { cutter: 8, passDepth: 4 } } }, (p) => ({
      ...p,
      tools: { ...p.tools, router: { cutter: 8, passDepth: 4 } },
    }));
  });

  test('a tick is set once and taken away again', () => {
    const ticked = expectCommand(empty, { kind: 'set-done', mark: 'part:A1/1', done: true }, (p) => ({
      ...p,
      done: ['part:A1/1'],
    }));
    expect(applyCommand(ticked, { kind: 'set-done', mark: 'part:A1/1', done: true })).toMatchObject({
      value: ticked,
    });
    expectCommand(ticked, { kind: 'set-done', mark: 'part:A1/1', done: false }, (p) => ({ ...p, done: [] }));
  });

  test('a price of a fixing is kept by its name and can be forgotten', () => {
    const priced = expectCommand(empty, { kind: 'set-fixing-price', item: 'Screw', price: 0.2 }, (p) => ({
      ...p,
      fixingPrices: [{ item: 'Screw', price: 0.2 }],
    }));
    expectCommand(priced, { kind: 'set-fixing-price', item: 'Screw', price: 0.3 }, (p) => ({
      ...p,
      fixingPrices: [{ item: 'Screw', price: 0.3 }],
    }));
    expectCommand(priced, { kind: 'set-fixing-price', item: 'Screw', price: null }, (p) => ({
      ...p,
      fixingPrices: [],
    }));
  });

  test('a command that changes nothing gives back the same object', () => {
    for (const command of [
      { kind: 'set-name', name: 'Curlew' },
      { kind: 'change-settings', settings: { film: project.settings.film } },
      { kind: 'change-settings', settings: {}, cleared: ['coatsShown'] },
      { kind: 'change-reading', shape: 'door', id: 'wb', reading: { ...reading } },
      { kind: 'change-piece', id: 'frame', piece: structuredClone(frame) },
    ] as const) {
      const result = applyCommand(project, command);
      expect(result.ok && result.value).toBe(project);
    }
  });

  test('values no project can have are refused', () => {
    const message = expectRefused(
      project,
      { kind: 'change-tools', tools: { sheetSaw: { ...project.tools.sheetSaw, kerf: -2 } } },
      'value-out-of-range',
    );
    expect(message).toContain('-2');
    expectRefused(project, { kind: 'change-settings', settings: { film: NaN } }, 'not-a-number');
    expectRefused(
      project,
      { kind: 'set-currency', currency: 'euro', pricesIncludeTax: true },
      'currency-unfit',
    );
    expectRefused(project, { kind: 'change-settings', settings: { moistureLow: 20 } }, 'moisture-order');
    expectRefused(
      project,
      { kind: 'change-stock', id: 'oak-27', stock: { ...board, count: 1.5 } },
      'value-out-of-range',
    );
  });
});

describe('commands on shapes and readings', () => {
  test('a shape is added, renamed and removed', () => {
    const added = expectCommand(empty, { kind: 'add-shape', shape }, (p) => ({ ...p, shapes: [shape] }));
    expectCommand(added, { kind: 'change-shape', id: 'door', change: { name: 'Forward door' } }, (p) => ({
      ...p,
      shapes: [{ ...shape, name: 'Forward door' }],
    }));
    expectCommand(added, { kind: 'remove-shape', id: 'door' }, (p) => ({ ...p, shapes: [] }));
  });

  test('a shape that a piece is fitted to stays, and the piece is named', () => {
    expect(expectRefused(project, { kind: 'remove-shape', id: 'door' }, 'shape-in-use')).toContain(
      'A Door frame',
    );
  });

  test('readings are added at their place, changed, repeated and removed', () => {
    const top: Reading = { id: 'wt', kind: 'distance', from: 'TL', to: 'TR', value: 635 };
    const withReadings = (readings: readonly Reading[]) => (p: Project) => ({
      ...p,
      shapes: [{ ...shape, readings }],
    });
    const two = expectCommand(
      project,
      { kind: 'add-reading', shape: 'door', reading: top, at: 0 },
      withReadings([top, reading]),
    );
    expectCommand(
      two,
      { kind: 'change-reading', shape: 'door', id: 'wt', reading: { ...top, value: 636 } },
      withReadings([{ ...top, value: 636 }, reading]),
    );
    const repeated = expectCommand(
      two,
      { kind: 'add-repeat', shape: 'door', id: 'wb', value: 640.5 },
      withReadings([top, { ...reading, repeats: [640.5] }]),
    );
    expectCommand(
      repeated,
      { kind: 'remove-repeat', shape: 'door', id: 'wb', index: 0 },
      withReadings([top, { ...reading, repeats: [] }]),
    );
    expectRefused(repeated, { kind: 'remove-repeat', shape: 'door', id: 'wb', index: 1 }, 'not-found');
    expectCommand(two, { kind: 'remove-reading', shape: 'door', id: 'wb' }, withReadings([top]));
  });

  test('an id that is taken and one that is missing are refused', () => {
    expectRefused(project, { kind: 'add-shape', shape }, 'id-taken');
    expectRefused(project, { kind: 'add-reading', shape: 'door', reading }, 'id-taken');
    expectRefused(project, { kind: 'remove-reading', shape: 'door', id: 'none' }, 'not-found');
    expectRefused(project, { kind: 'remove-reading', shape: 'none', id: 'wb' }, 'not-found');
  });
});

describe('commands on pieces and the rack', () => {
  test('a piece is added, changed and removed', () => {
    const bare = { ...project, pieces: [] };
    expectCommand(bare, { kind: 'add-piece', piece: frame }, (p) => ({ ...p, pieces: [frame] }));
    expectCommand(project, { kind: 'remove-piece', id: 'frame' }, (p) => ({ ...p, pieces: [] }));
  });

  test('a parameter is set, goes back to its default, and a material is chosen', () => {
    const withParameters = (parameters: object) => (p: Project) => ({
      ...p,
      pieces: [{ ...frame, parameters } as Piece],
    });
    expectCommand(
      project,
      { kind: 'set-parameter', id: 'frame', key: 'horn', value: 15 },
      withParameters({ jambThickness: 22, horn: 15, materials: { frame: 'oak' } }),
    );
    expectCommand(
      project,
      { kind: 'set-parameter', id: 'frame', key: 'jambThickness', value: null },
      withParameters({ materials: { frame: 'oak' } }),
    );
    expectCommand(
      project,
      { kind: 'set-parameter', id: 'frame', key: 'materials.covers', value: 'oak' },
      withParameters({ jambThickness: 22, materials: { frame: 'oak', covers: 'oak' } }),
    );
  });

  test('a parameter that the piece does not have, and a value it cannot have, are refused', () => {
    const set = (key: string, value: ParameterValue | null): Command => ({
      kind: 'set-parameter',
      id: 'frame',
      key,
      value,
    });
    expect(expectRefused(project, set('wings', 2), 'parameter-unknown')).toContain('"wings"');
    expectRefused(project, set('jambThickness', '20'), 'parameter-unfit');
    expectRefused(project, set('corner', 'glue'), 'parameter-unfit');
    expectRefused(project, set('sill', 1), 'parameter-unfit');
    expectRefused(project, set('infillOrdinates', [1, NaN]), 'parameter-unfit');
    expectRefused(project, set('materials.frame', null), 'parameter-required');
  });

  test('a piece cannot name a material or shape that is not there', () => {
    const message = expectRefused(
      project,
      { kind: 'set-parameter', id: 'frame', key: 'materials.frame', value: 'ash' },
      'material-missing',
    );
    expect(message).toContain('"ash"');
    expectRefused(
      project,
      { kind: 'change-piece', id: 'frame', piece: { ...frame, shape: 'hatch' } },
      'shape-missing',
    );
  });

  test('two pieces cannot have the same letter', () => {
    expectRefused(project, { kind: 'add-piece', piece: { ...frame, id: 'second' } }, 'letter-twice');
    expectRefused(
      project,
      { kind: 'add-piece', piece: { ...frame, id: 'second', letter: 'O' } },
      'letter-unfit',
    );
  });

  test('materials and stock come and go, but not a material in use', () => {
    const ash = { ...oak, id: 'ash', name: 'Ash' };
    expectCommand(project, { kind: 'add-material', material: ash }, (p) => ({ ...p, materials: [oak, ash] }));
    expectCommand(
      project,
      { kind: 'change-material', id: 'oak', material: { ...oak, name: 'Bog oak' } },
      (p) => ({
        ...p,
        materials: [{ ...oak, name: 'Bog oak' }],
      }),
    );
    expect(expectRefused(project, { kind: 'remove-material', id: 'oak' }, 'material-in-use')).toContain(
      'oak-27',
    );
    const loose = { ...project, pieces: [], stock: [] };
    expectCommand(loose, { kind: 'remove-material', id: 'oak' }, (p) => ({ ...p, materials: [] }));
    expectCommand(loose, { kind: 'add-stock', stock: board }, (p) => ({ ...p, stock: [board] }));
    expectCommand(project, { kind: 'remove-stock', id: 'oak-27' }, (p) => ({ ...p, stock: [] }));
  });

  test('what did not change is shared', () => {
    const result = applyCommand(project, { kind: 'set-name', name: 'Wren' });
    expect(result.ok && result.value.shapes).toBe(project.shapes);
    expect(result.ok && result.value.pieces[0]).toBe(frame);
  });

  test('a fault that was there before does not stop other work', () => {
    const broken = { ...project, materials: [] };
    expectCommand(broken, { kind: 'set-name', name: 'Wren' }, (p) => ({ ...p, name: 'Wren' }));
  });
});
