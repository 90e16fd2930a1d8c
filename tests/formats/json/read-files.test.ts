import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

import type { Result } from '#core/problems';
import {
  identifyFile,
  readAdjustment,
  readCuttingJob,
  readCuttingPlan,
  readPlanFile,
  readProject,
  readSurvey,
  writeJson,
} from '#formats/json';

import { contractJob, contractPlan, contractSurvey, examples } from '../../support/file-examples.ts';
import { generateProject } from '../../support/generate-project.ts';

function firstProblem(result: Result<unknown>) {
  expect(result.ok).toBe(false);
  const [problem] = result.problems;
  if (!problem) throw new Error('refused without a finding');
  expect(problem.severity).toBe('stop');
  expect(problem.remedy).toBeTruthy();
  return problem;
}

describe('saving and loading', () => {
  test('always: a project comes back as it was saved', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), (seed) => {
        const project = generateProject(seed);
        const text = writeJson(project);
        const read = readProject(text);
        expect(read).toEqual({ ok: true, value: project, problems: [] });
        expect(read.ok && writeJson(read.value)).toBe(text);
      }),
      { numRuns: 200 },
    );
  });

  test('the text is indented by two, ends its line and can carry a byte order mark', () => {
    const text = writeJson({ a: [1] });
    expect(text).toBe('{\n  "a": [\n    1\n  ]\n}\n');
    expect(readSurvey(`\ufeff${writeJson(contractSurvey)}`).ok).toBe(true);
  });

  test('a number that JSON cannot hold is our mistake and is never written', () => {
    expect(() => writeJson({ length: NaN })).toThrow();
  });

  test('always: any text at all is read or refused with a sentence, never thrown', () => {
    const mangled = fc.tuple(fc.nat(), fc.nat(40), fc.string({ maxLength: 6 })).map(([at, cut, put]) => {
      const text = writeJson(contractJob);
      const place = at % text.length;
      return text.slice(0, place) + put + text.slice(place + cut);
    });
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json(), mangled), (text) => {
        for (const read of [readProject, readSurvey, readCuttingJob, readPlanFile, identifyFile]) {
          const result: Result<unknown> = read(text);
          if (result.ok) continue;
          expect(result.problems.length).toBeGreaterThan(0);
          for (const problem of result.problems) expect(problem.message).not.toBe('');
        }
      }),
      { numRuns: 500 },
    );
  });

  test('always: what our reader calls JSON is what the platform calls JSON, but for keys given twice', () => {
    const signs = fc.string({ unit: fc.constantFrom(...'{}[]:,"\\ntrue01.e-+ \n/u') });
    fc.assert(
      fc.property(fc.oneof(signs, fc.json()), (text) => {
        const [problem] = identifyFile(text).problems;
        const isBroken = problem?.code === 'json-broken' && !problem.message.includes('twice');
        let isRefused = false;
        try {
          JSON.parse(text);
        } catch {
          isRefused = true;
        }
        if (!problem?.message.includes('twice')) expect(isBroken).toBe(isRefused);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('a survey', () => {
  test('the one of the contract is read', () => {
    expect(readSurvey(writeJson(contractSurvey))).toMatchObject({ ok: true, value: contractSurvey });
  });

  test('without seenFrom it is refused, for distances cannot tell a shape from its mirror image', () => {
    const { readings } = contractSurvey;
    expect(firstProblem(readSurvey(JSON.stringify({ readings })))).toMatchObject({
      code: 'missing-key',
      about: 'seenFrom',
    });
  });

  test('two readings with the same id are refused', () => {
    const readings = [...contractSurvey.readings, contractSurvey.readings[0]];
    expect(firstProblem(readSurvey(JSON.stringify({ ...contractSurvey, readings })))).toMatchObject({
      code: 'id-twice',
      about: 'readings[5].id',
    });
  });

  test('a key of another kind of reading is named with its path', () => {
    const text = writeJson(contractSurvey).replace('"kind": "plumb"', '"kind": "plumb", "att": 0.5');
    expect(firstProblem(readSurvey(text))).toMatchObject({ code: 'unknown-key', about: 'readings[3].att' });
  });
});

describe('a cutting job', () => {
  test('the one of the contract is read, and so is one with nothing but stock and parts', () => {
    expect(readCuttingJob(writeJson(contractJob))).toMatchObject({ ok: true, value: contractJob });
    expect(readCuttingJob('{"stock":[],"parts":[]}').ok).toBe(true);
  });

  test('a negative kerf is refused with its number', () => {
    const problem = firstProblem(readCuttingJob(JSON.stringify({ ...contractJob, kerf: -3 })));
    expect(problem.message).toBe('kerf is -3; it must be 0 or more.');
  });

  test('in two dimensions a part needs a width, in one nothing has one', () => {
    const flat = { stock: [{ id: 's', length: 100, width: 10 }], parts: [{ id: 'p', length: 50 }] };
    expect(firstProblem(readCuttingJob(JSON.stringify(flat)))).toMatchObject({
      code: 'missing-key',
      about: 'parts[0].width',
    });
    const bars = { ...flat, cuts: { style: 'length' } };
    expect(firstProblem(readCuttingJob(JSON.stringify(bars)))).toMatchObject({ about: 'stock[0].width' });
  });

  test('two parts with the same id are refused', () => {
    const part = { id: 'p', length: 50, width: 10 };
    const job = { stock: [], parts: [part, part] };
    expect(firstProblem(readCuttingJob(JSON.stringify(job)))).toMatchObject({ about: 'parts[1].id' });
  });
});

describe('answers and the kinds of file', () => {
  test('answers are read back', () => {
    expect(readCuttingPlan(writeJson(contractPlan))).toMatchObject({ ok: true, value: contractPlan });
    expect(readAdjustment(writeJson(examples.adjustment.good[0])).ok).toBe(true);
    expect(readPlanFile(writeJson(examples['plan-file'].good[0])).ok).toBe(true);
  });

  test('a fault deep in a tree of cuts has its path', () => {
    const text = writeJson(contractPlan).replace('"at": 710', '"at": "710"');
    expect(firstProblem(readCuttingPlan(text)).about).toBe('layouts[0].cuts.children[0].at');
  });

  test.each(Object.entries(examples).filter(([name]) => name !== 'findings'))(
    'a %s file is told by its keys',
    (name, { good }) => {
      for (const file of good) expect(identifyFile(writeJson(file))).toMatchObject({ ok: true, value: name });
    },
  );

  test('what is none of ours is refused', () => {
    expect(firstProblem(identifyFile('{"a":1}')).message).toContain('its keys are a');
    expect(firstProblem(identifyFile('7')).code).toBe('kind-unknown');
    expect(firstProblem(identifyFile('{')).code).toBe('json-broken');
  });
});
