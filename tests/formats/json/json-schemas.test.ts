import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';

import { Ajv2020 } from 'ajv/dist/2020.js';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';

import { newProject } from '#core/project';
import { fileSchemas } from '#formats/json';

import { examples } from '../../support/file-examples.ts';
import { generateProject } from '../../support/generate-project.ts';
import { makeJsonSchema, schemaNames, writeJsonSchema, type SchemaName } from '../../support/json-schemas.ts';

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
});
