import { emitFreeLayout } from './emit-free.ts';
import { emitLayout } from './emit-layout.ts';
import type { Answer } from './emit-plan.ts';
import type { FreeLoad } from './free-search.ts';
import type { Load } from './load.ts';
import { makeNamer, nameParts } from './merge-kinds.ts';
import type { Model } from './model.ts';

/** A load as an answer; parts the search was not given count as left. */
export function answerWith(model: Model, load: Load): Answer {
  const left = model.kinds.map((kind) => kind.count);
  const sheets = nameParts(model, load).map((sheet) => {
    for (const { kind } of sheet.parts) left[kind] = (left[kind] as number) - 1;
    return { bin: sheet.bin, layout: emitLayout(model, sheet) };
  });
  return { sheets, left, cost: load.cost };
}

/** The same for a load without trees of cuts. */
export function answerFreely(model: Model, load: FreeLoad): Answer {
  const left = model.kinds.map((kind) => kind.count);
  const name = makeNamer(model);
  const nameOf = (merged: number): number => {
    const kind = name(merged);
    left[kind] = (left[kind] as number) - 1;
    return kind;
  };
  const sheets = load.sheets.map((sheet) => ({
    bin: sheet.bin,
    layout: emitFreeLayout(model, sheet, nameOf),
  }));
  return { sheets, left, cost: load.cost };
}
