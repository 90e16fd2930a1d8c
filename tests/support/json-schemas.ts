import { toJsonSchema } from '@valibot/to-json-schema';

import { fileSchemas, writeJson } from '#formats/json';

export type SchemaName = keyof typeof fileSchemas;

export const schemaNames = Object.keys(fileSchemas) as SchemaName[];

const titles: Readonly<Record<SchemaName, string>> = {
  project: 'Project, version 1',
  survey: 'Survey: the input of "joggle measure"',
  adjustment: 'The answer of "joggle measure"',
  'cutting-job': 'Cutting job: the input of "joggle cut"',
  'cutting-plan': 'The answer of "joggle cut"',
  'nest-job': 'Job of true shapes: the input of "joggle nest"',
  'nest-plan': 'The answer of "joggle nest"',
  'plan-file': 'plan.json: written by "joggle plan"',
  'check-answer': 'The answer of "joggle check"',
  findings: 'The answer to wrong use or unreadable input',
};

/** The JSON Schema (draft 2020-12) of one of our files, from the schema that guards its door. Lengths in mm. */
export function makeJsonSchema(name: SchemaName): object {
  const schema = toJsonSchema(fileSchemas[name], {
    target: 'draft-2020-12',
    // JSON has no infinity: what remains of `finite` is `number`, and 1e999 is caught by the reader.
    ignoreActions: ['finite'],
  });
  return { $schema: schema.$schema, title: titles[name], ...schema };
}

/** The text of its file. */
export function writeJsonSchema(name: SchemaName): string {
  return writeJson(makeJsonSchema(name));
}
