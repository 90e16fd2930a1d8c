import { checkVisits, planVisits, type Place, type Task } from '#core/visits';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

function task(id: string, place: Place, after: readonly string[] = [], more: Partial<Task> = {}): Task {
  return { id, text: `do ${id}`, place, minutes: 10, after, needs: [], makes: [], ...more };
}

/** Fewest stays by trying every order of the tasks: the definition in joinery F11, and nothing clever. */
function fewestByTrying(tasks: readonly Task[]): number {
  let best = Infinity;
  const go = (done: readonly string[], place: Place | null, stays: number): void => {
    if (stays >= best) return;
    if (done.length === tasks.length) {
      best = stays;
      return;
    }
    for (const next of tasks) {
      if (done.includes(next.id) || !next.after.every((id) => done.includes(id))) continue;
      go([...done, next.id], next.place, stays + (next.place === place ? 0 : 1));
    }
  };
  go([], null, 0);
  return best;
}

const places: readonly Place[] = ['boat', 'workshop', 'shop'];
const network = fc
  .array(fc.record({ place: fc.constantFrom(...places), mask: fc.nat({ max: 127 }) }), {
    minLength: 1,
    maxLength: 7,
  })
  .map((items) =>
    items.map((item, index) =>
      task(
        `t${index}`,
        item.place,
        items.flatMap((_, other) => (other < index && (item.mask >> other) & 1 ? [`t${other}`] : [])),
      ),
    ),
  );

describe('visits', () => {
  test('measuring, buying, making and fitting take four visits', () => {
    const plan = planVisits([
      task('measure', 'boat'),
      task('buy', 'shop', ['measure']),
      task('cut', 'workshop', ['buy']),
      task('fit', 'boat', ['cut']),
    ]);
    expect(plan.visits.map((visit) => visit.place)).toEqual(['boat', 'shop', 'workshop', 'boat']);
    expect(plan.proven).toBe(true);
  });

  test('the better start is found: buying first saves a visit', () => {
    const plan = planVisits([
      task('bore', 'workshop', ['bits']),
      task('bits', 'shop'),
      task('mark', 'workshop'),
    ]);
    expect(plan.visits.map((visit) => visit.place)).toEqual(['shop', 'workshop']);
  });

  test('always: as few visits as trying every order of the tasks gives (joinery F11)', () => {
    fc.assert(
      fc.property(network, (tasks) => {
        const plan = planVisits(tasks);
        expect(checkVisits(tasks, plan)).toEqual([]);
        expect(plan.proven).toBe(true);
        expect(plan.visits.length).toBe(fewestByTrying(tasks));
      }),
      { numRuns: 400 },
    );
  });

  test('always: the order of the list does not change the number of visits', () => {
    fc.assert(
      fc.property(network, (tasks) => {
        expect(planVisits([...tasks].reverse()).visits.length).toBe(planVisits(tasks).visits.length);
      }),
    );
  });

  test('tasks that wait for one another are named and left out', () => {
    const tasks = [task('a', 'boat', ['b']), task('b', 'shop', ['a']), task('c', 'boat')];
    const plan = planVisits(tasks);
    expect(plan.undone).toEqual(['a', 'b']);
    expect(plan.visits.map((visit) => visit.tasks)).toEqual([['c']]);
    expect(plan.findings[0]?.message).toContain('2 tasks wait for one another');
    expect(checkVisits(tasks, plan)).toEqual([]);
  });

  test('what is ticked off is not visited again and holds nothing up', () => {
    const plan = planVisits([
      task('measure', 'boat', [], { done: true }),
      task('cut', 'workshop', ['measure']),
    ]);
    expect(plan.visits.map((visit) => visit.tasks)).toEqual([['cut']]);
  });

  test('what is made at the workshop is carried to the boat, what lies there already is not', () => {
    const plan = planVisits([
      task('cut', 'workshop', [], { makes: ['A1'], needs: ['glue'] }),
      task('fit', 'boat', ['cut'], { needs: ['A1', 'screws'] }),
      task('plug', 'boat', ['fit'], { needs: ['A1', 'plugs'] }),
    ]);
    expect(plan.visits.map((visit) => visit.take)).toEqual([['glue'], ['A1', 'screws', 'plugs']]);
  });

  test('a plan with a task at the wrong place or too early is refused by the checker', () => {
    const tasks = [task('cut', 'workshop'), task('fit', 'boat', ['cut'])];
    const good = planVisits(tasks);
    const swapped = { ...good, visits: [...good.visits].reverse() };
    expect(checkVisits(tasks, swapped).map((problem) => problem.message)).toContain(
      '"do fit" is done before "cut".',
    );
    const wrong = { ...good, visits: good.visits.map((visit) => ({ ...visit, place: 'shop' as const })) };
    expect(checkVisits(tasks, wrong).length).toBeGreaterThan(0);
    expect(checkVisits(tasks, { ...good, visits: good.visits.slice(0, 1) })[0]?.message).toBe(
      '"do fit" is left out.',
    );
  });

  test('no tasks need no visit', () => {
    expect(planVisits([])).toEqual({ visits: [], proven: true, undone: [], findings: [] });
  });
});
