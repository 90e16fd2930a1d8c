import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';

import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';

import { newProject } from '#core/project';
import { fileSchemas, readProject } from '#formats/json';

import { examples } from '../../support/file-examples.ts';
import { generateProject } from '../../support/generate-project.ts';
import { makeJsonSchema, schemaNames, writeJsonSchema, type SchemaName } from '../../support/json-schemas.ts';
import { rollDice, type Dice } from '../../support/random.ts';

const folder = new URL('../../../static/schemas/', import.meta.url);

/** `UPDATE_SCHEMAS=1 npx vitest run tests/formats/json` writes the files anew. */
const isUpdating = process.env.UPDATE_SCHEMAS === '1';

function validate(name: SchemaName) {
  return new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(makeJsonSchema(name));
}

describe('JSON Schemas', () => {
  test.each(schemaNames)('the published %s schema is the one the validator has', (name) => {
    const file = new URL(`${name}.schema.json`, folder);
    if (isUpdating) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(file, writeJsonSchema(name));
    }
    expect(existsSync(file), `${name}.schema.json is missing`).toBe(true);
    expect(readFileSync(file, 'utf8')).toBe(writeJsonSchema(name));
  });

  test.each(schemaNames)('%s: schema and validator agree on what is right', (name) => {
    const check = validate(name);
    for (const good of examples[name].good) {
      expect(v.safeParse(fileSchemas[name], good).success).toBe(true);
      expect(check(good), JSON.stringify(check.errors)).toBe(true);
    }
  });

  test.each(schemaNames)('%s: schema and validator agree on what is wrong', (name) => {
    const check = validate(name);
    for (const spoil of examples[name].spoil) {
      const bad: unknown = structuredClone(examples[name].good[0]);
      spoil(bad);
      expect(v.safeParse(fileSchemas[name], bad).success, spoil.toString()).toBe(false);
      expect(check(bad), spoil.toString()).toBe(false);
    }
  });

  test('always: generated projects are right by the schema too', () => {
    const check = validate('project');
    expect(check(newProject('new'))).toBe(true);
    for (let seed = 0; seed < 100; seed += 1) expect(check(generateProject(seed)), `seed ${seed}`).toBe(true);
  });

  test('always: a project spoilt anywhere is refused by both or by neither', () => {
    const check = validate('project');
    // What a schema cannot say: that ids differ, that letters suit, that low is below high.
    const beyondSchema = ['id-twice', 'letter-twice', 'letter-unfit', 'moisture-order'];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 1, max: 2 }), (seed, faults) => {
        const dice = rollDice(seed);
        const project: unknown = JSON.parse(JSON.stringify(generateProject(seed % 50)));
        for (let fault = 0; fault < faults; fault += 1) spoilSomewhere(dice, project);
        const read = readProject(JSON.stringify(project));
        const isSound = read.ok || read.problems.every((problem) => beyondSchema.includes(problem.code));
        expect(check(project), JSON.stringify(read.problems)).toBe(isSound);
      }),
      { numRuns: 600 },
    );
  });
});

/** Puts, takes away or adds something at a random place of plain data. */
function spoilSomewhere(dice: Dice, document: unknown): void {
  const places: (readonly [Record<string, unknown>, string])[] = [];
  const collect = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, child] of Object.entries(value)) {
      places.push([value as Record<string, unknown>, key]);
      collect(child);
    }
  };
  collect(document);
  const [holder, key] = places[dice.whole(0, places.length - 1)] ?? [{}, ''];
  const odd = dice.pick<unknown>([
    -1,
    0,
    0.5,
    1,
    31,
    1e12,
    '',
    'x',
    true,
    false,
    null,
    [],
    {},
    [1],
    { a: 1 },
  ]);
  const act = dice.pick(['put', 'take', 'add']);
  if (act === 'put') holder[key] = odd;
  if (act === 'take') {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
  }
  if (act === 'add' && !Array.isArray(holder))
    holder[dice.pick(['extra', 'note', 'width', 'id', 'count'])] = odd;
}
