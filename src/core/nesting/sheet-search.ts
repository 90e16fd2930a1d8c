import { adopt, isOver, mergeNest, mostSearched, splitLoad } from './engine.ts';
import type { Engine } from './engine.ts';
import { openNest, readNest } from './load.ts';
import type { Lying } from './load.ts';
import { listExchanges } from './exchanges.ts';
import type { Exchange } from './exchanges.ts';
import { solveJigsaw } from './jigsaw.ts';
import { explore, squeeze, startStrip, workAtClashes } from './strip-search.ts';
import type { Pausing } from './strip-search.ts';

/** Parts moved in the first round; each round has twice as many. */
const firstRound = 1000;
/** Rounds of shortening the last sheet once the cost is proven: always the same, so that proven plans are. */
const polishRounds = 3;

/** Seeks cheaper sheets, and a longer rest of the last one, in rounds each twice as long, until proven or over. */
export function* runSheets(engine: Engine): Pausing<void> {
  if (engine.best.parts.length === 0) return;
  if (!isProven(engine)) yield* tryJigsaw(engine);
  let tried = 0;
  for (let round = firstRound; !isOver(engine) && !isProven(engine); round *= 2) {
    const exchanges = listExchanges(engine);
    const tries = Math.min(exchanges.length, 3);
    for (let k = 0; k < tries && !isOver(engine); k++) {
      const exchange = exchanges[tried++ % exchanges.length]!;
      if (yield* tryExchange(engine, exchange, round / tries)) break;
    }
    yield* shortenLast(engine, exchanges.length === 0 ? round : round / 4);
  }
  for (let k = 0; k < polishRounds && isProven(engine) && !isOver(engine); k++)
    yield* shortenLast(engine, 1000);
}

function* tryJigsaw(engine: Engine): Pausing<void> {
  const { model, random, work, isTimeUp } = engine;
  const seed = random.whole(0, 2 ** 31 - 1);
  const solved = yield* solveJigsaw(model, { seed, work, isOver: isTimeUp });
  if (solved) adopt(engine, solved);
}

/** Whether no cheaper sheets can be had. */
export function isProven({ best, bound }: Engine): boolean {
  return best.left.length === 0 && best.cost <= bound + 1e-6 * Math.max(1, bound);
}

/** Some sheets of the load with not too many parts together, these ones first. */
function gatherSheets(engine: Engine, first: readonly number[]): number[] {
  const { best, random } = engine;
  const parts = best.bins.map(() => 0);
  for (const part of best.parts) parts[part.sheet]!++;
  const chosen = [...first];
  let count = chosen.reduce((sum, sheet) => sum + parts[sheet]!, 0);
  const others = best.bins.map((_, sheet) => sheet).filter((sheet) => !first.includes(sheet));
  while (others.length > 0) {
    const sheet = others.splice(random.whole(0, others.length - 1), 1)[0]!;
    if (chosen.length >= 2 && count + parts[sheet]! > mostSearched) continue;
    chosen.push(sheet);
    count += parts[sheet]!;
  }
  return chosen;
}

/** Takes sheets away, brings others in, and seeks room for all their parts; true when that made a better load. */
function* tryExchange(engine: Engine, exchange: Exchange, moves: number): Pausing<boolean> {
  const { model, best, random } = engine;
  const sheets = gatherSheets(engine, exchange.remove);
  const { taken, rest } = splitLoad(best, sheets);
  const removed = exchange.remove.length;
  // the sheets taken away come first: what lay on them lies nowhere
  const parts: Lying[] = taken.map((part) => ({
    ...part,
    sheet: part.sheet < removed ? -1 : part.sheet - removed,
  }));
  for (const source of best.left)
    parts.push({ source, sheet: -1, pose: model.shapes.firstPose[source]!, x: 0, y: 0 });
  const bins = [...sheets.slice(removed).map((sheet) => best.bins[sheet]!), ...exchange.add];
  if (bins.length === 0) return false;
  const nest = openNest(model, random, bins, parts);
  // cheaper sheets may have come from elsewhere meanwhile
  const isOutdone = () => engine.best.cost < best.cost;
  const isOver = () => nest.moves >= moves || isOverAt(engine, nest.moves) || isOutdone();
  const isFree = yield* workAtClashes(nest, isOver);
  engine.moves += nest.moves;
  if (!isFree || nest.sheet.some((sheet) => sheet < 0)) return false;
  return adopt(engine, mergeNest(engine, { bins, parts: readNest(nest) }, { rest, load: best, left: [] }));
}

function isOverAt(engine: Engine, moves: number): boolean {
  return engine.moves + moves >= engine.work || engine.isTimeUp();
}

/** Moves parts off the last sheet and the rest of them to its end. */
function* shortenLast(engine: Engine, moves: number): Pausing<void> {
  const { model, best, random } = engine;
  if (best.bins.length === 0 || isOver(engine)) return;
  const last = best.bins.length - 1;
  const sheets = gatherSheets(engine, [last]).reverse();
  const { taken, rest } = splitLoad(best, sheets);
  const bins = sheets.map((sheet) => best.bins[sheet]!);
  const nest = openNest(model, random, bins, taken);
  const search = startStrip({
    nest,
    bound: 0,
    isOver: () => isOverAt(engine, nest.moves),
    tell: () => {
      if (nest.sheet.some((sheet) => sheet < 0)) return;
      adopt(
        engine,
        mergeNest(engine, { bins, parts: readNest(nest) }, { rest, load: best, left: best.left }),
      );
    },
  });
  yield* explore(search, 0.8 * moves);
  yield* squeeze(search, 0.2 * moves);
  engine.moves += nest.moves;
}
