import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import {
  newProject,
  redo,
  runCommand,
  runCommands,
  startHistory,
  putInPlace,
  undo,
  type Command,
  type History,
  type Project,
} from '#core/project';

import { freezeDeep } from '../../support/freeze-deep.ts';
import { generateProject } from '../../support/generate-project.ts';
import { rollDice, type Dice } from '../../support/random.ts';

function run(history: History, command: Command): History {
  const next = runCommand(history, command);
  if (!next.ok) throw new Error(next.problems[0]?.message);
  return next.value;
}

/** A command as a user might give it, the mistaken ones included. */
function inventCommand(dice: Dice, project: Project): Command {
  const shape = project.shapes[0];
  const piece = project.pieces[dice.whole(0, Math.max(0, project.pieces.length - 1))];
  const reading = shape?.readings[dice.whole(0, Math.max(0, shape.readings.length - 1))];
  const stock = project.stock[0];
  const choices: [Command, ...Command[]] = [
    { kind: 'set-name', name: `Name ${dice.whole(1, 3)}` },
    { kind: 'set-done', mark: `part:A${dice.whole(1, 3)}`, done: dice.chance(0.5) },
    { kind: 'change-settings', settings: { film: dice.pick([0.1, 0.15, -1]) } },
    { kind: 'set-fixing-price', item: 'Screw', price: dice.pick([null, 0.2, 0.3]) },
  ];
  if (shape && reading) {
    choices.push({
      kind: 'change-reading',
      shape: shape.id,
      id: reading.id,
      reading: { ...reading, value: dice.whole(400, 900) },
    });
    choices.push({ kind: 'add-repeat', shape: shape.id, id: reading.id, value: dice.whole(400, 900) });
    choices.push({ kind: 'remove-reading', shape: shape.id, id: reading.id });
    choices.push({ kind: 'remove-shape', id: shape.id });
  }
  if (piece) {
    choices.push({ kind: 'remove-piece', id: piece.id });
    choices.push({
      kind: 'change-piece',
      id: piece.id,
      piece: { ...piece, name: `Piece ${dice.whole(1, 9)}` },
    });
    choices.push({ kind: 'set-parameter', id: piece.id, key: 'notch', value: dice.pick([null, 10, 12]) });
  }
  if (stock)
    choices.push({ kind: 'change-stock', id: stock.id, stock: { ...stock, price: dice.whole(10, 99) } });
  return dice.pick(choices);
}

describe('undo and redo', () => {
  test('another state put in place of the present one is a step like any other', () => {
    const first = startHistory(newProject('Curlew'));
    const earlier = newProject('Curlew, last week');
    const now = putInPlace(first, earlier);
    expect(now.present).toBe(earlier);
    expect(undo(now).present).toBe(first.present);
    expect(putInPlace(now, earlier)).toBe(now);
  });

  test('undo gives back the same object, redo the one undone', () => {
    const first = newProject('Curlew');
    const changed = run(startHistory(first), { kind: 'set-name', name: 'Wren' });
    expect(undo(changed).present).toBe(first);
    expect(redo(undo(changed)).present).toBe(changed.present);
  });

  test('at either end nothing happens', () => {
    const history = startHistory(newProject('Curlew'));
    expect(undo(history)).toBe(history);
    expect(redo(history)).toBe(history);
  });

  test('a new command forgets what was undone', () => {
    const one = run(startHistory(newProject('Curlew')), { kind: 'set-name', name: 'Wren' });
    const other = run(undo(one), { kind: 'set-name', name: 'Teal' });
    expect(redo(other)).toBe(other);
  });

  test('a refused command and one that changes nothing leave no step', () => {
    const history = startHistory(newProject('Curlew'));
    expect(runCommand(history, { kind: 'remove-piece', id: 'none' }).ok).toBe(false);
    expect(run(history, { kind: 'set-name', name: 'Curlew' })).toBe(history);
  });

  test('only the last 500 steps are kept', () => {
    let history = startHistory(newProject('0'));
    for (let step = 1; step <= 600; step += 1) history = run(history, { kind: 'set-name', name: `${step}` });
    expect(history.past).toHaveLength(500);
    expect(history.past[0]?.name).toBe('100');
  });

  test('always: undoing all gives back the first object, doing all again the last one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 1, max: 40 }), (seed, count) => {
        const dice = rollDice(seed);
        const first = freezeDeep(generateProject(seed));
        let history = startHistory(first);
        const seen: Project[] = [first];
        for (let step = 0; step < count; step += 1) {
          const next = runCommand(history, freezeDeep(inventCommand(dice, history.present)));
          if (!next.ok || next.value === history) continue;
          history = next.value;
          seen.push(freezeDeep(history.present));
        }
        const last = history.present;
        for (const project of seen.toReversed()) {
          expect(history.present).toBe(project);
          history = undo(history);
        }
        expect(history.present).toBe(first);
        expect(history.past).toHaveLength(0);
        while (redo(history) !== history) history = redo(history);
        expect(history.present).toBe(last);
      }),
      { numRuns: 60 },
    );
  });

  test('always: the same commands read from JSON lead to the same project', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), (seed) => {
        const dice = rollDice(seed);
        let history = startHistory(generateProject(seed));
        let replayed = startHistory(generateProject(seed));
        for (let step = 0; step < 15; step += 1) {
          const command = inventCommand(dice, history.present);
          const next = runCommand(history, command);
          const again = runCommand(replayed, JSON.parse(JSON.stringify(command)) as Command);
          expect(again.ok).toBe(next.ok);
          if (next.ok) history = next.value;
          if (again.ok) replayed = again.value;
        }
        expect(replayed.present).toEqual(history.present);
      }),
      { numRuns: 40 },
    );
  });
});

test('several commands are one step, and those that fail are told', () => {
  const start = startHistory(freezeDeep(newProject('Boat')));
  const { history, done, problems } = runCommands(start, [
    { kind: 'set-name', name: 'Curlew' },
    { kind: 'remove-shape', id: 'no such shape' },
    { kind: 'set-done', mark: 'part:A1', done: true },
  ]);
  expect(done).toBe(2);
  expect(problems.map(({ code }) => code)).toEqual(['not-found']);
  expect(history.present).toMatchObject({ name: 'Curlew', done: ['part:A1'] });
  expect(undo(history).present).toBe(start.present);
  expect(runCommands(start, []).history).toBe(start);
});
