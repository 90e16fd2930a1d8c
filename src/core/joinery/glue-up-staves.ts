import { formatNumber } from '#core/units';
import type { Panel } from './glue-up-panels.ts';
import type { Part } from './types.ts';
import type { WorkingBook } from './working.ts';

const source = 'joinery D4, C16';

/** The part with its staves; the book gets how many, and their size. */
export function makeUp(panel: Panel, book: WorkingBook): Part {
  const { part, state, board, flat, leaves } = panel;
  const names = namesOf(part, book);
  const about = (what: string) => `${part.name}: ${what}`;
  const name = (what: string) => `glue_${part.id.replace(/^\D+/, '')}_${what}`;
  const [length, width] = [
    nameSize(book, [names.length, name('length')], panel.length, about('length leaving the saw')),
    nameSize(book, [names.width, name('width')], panel.width, about('width leaving the saw')),
  ];
  const rules = [
    ...(board === null ? [] : [`up((${width} + 4)/(${name('board')} - 2), 1)`]),
    ...(flat === null ? [] : [`up(${width}/${name('flat')}, 1)`]),
  ];
  if (board !== null) book.put(name('board'), board, about('widest board for its staves, trimmed'), 'rack');
  if (flat !== null)
    book.put(name('flat'), flat, about('widest flat-sawn board in it'), 'setting, joinery D3');
  const least = `max(${['2', ...rules].join(', ')})`;
  const rule = leaves === 2 ? `2*up(${least}/2, 1)` : least;
  const count = book.work(name('n'), rule, about('staves'), source, 'count');
  const size = {
    length: book.work(name('stave_L'), `up(${length} + 25, 1)`, about('stave, length'), source),
    width: book.work(
      name('stave_W'),
      `up((${width} + 6 + 2*(${name('n')} - 1))/${name('n')}, 1)`,
      about('stave, width'),
      source,
    ),
    thickness: book.work(
      name('stave_T'),
      leaves === 2
        ? `2*${names.thickness} + 5.5`
        : state === 'sawn'
          ? `${names.thickness} + 5`
          : names.thickness,
      about(leaves === 2 ? 'blank of two leaves, thickness' : 'stave, thickness'),
      leaves === 2 ? 'joinery D3' : source,
    ),
  };
  const isAcross = part.grain === 'along-width';
  return {
    ...part,
    rough: isAcross ? { ...size, length: size.width, width: size.length } : size,
    staves: { count, width: panel.width / count, ...(leaves === 2 && { leaves }) },
    notes: [...part.notes.filter((note) => !note.startsWith('Jointed from boards')), markNote(count, leaves)],
  };
}

function markNote(count: number, leaves: 1 | 2): string {
  if (leaves === 2)
    return `Book-matched of ${formatNumber(count)} leaves: each blank is sawn through its thickness and opened about the joint, one leaf the mirror image of the other; a triangle is drawn across the joints of the face side.`;
  return `Glued up of ${formatNumber(count)} staves edge to edge, rings up and down in turn; a triangle is drawn across the joints of the face side.`;
}

interface Names {
  readonly length: string;
  readonly width: string;
  readonly thickness: string;
}

/** The working steps behind its length along the grain, its width and its thickness. */
function namesOf({ grain, working, cut, id, name }: Part, book: WorkingBook): Names {
  const [length, width] =
    grain === 'along-width' ? [working.width, working.length] : [working.length, working.width];
  const thickness = `glue_${id.replace(/^\D+/, '')}_T`;
  return {
    length,
    width,
    thickness: nameSize(book, [working.thickness, thickness], cut.thickness, `${name}: thickness`),
  };
}

/** The name of a size in the working: the known one where it says the same, else a new one for what leaves the saw. */
function nameSize(
  book: WorkingBook,
  [known, fresh]: readonly [string, string],
  value: number,
  label: string,
): string {
  if (book.has(known) && Math.abs(book.value(known) - value) < 1e-9) return known;
  book.put(fresh, value, label, 'joinery D4');
  return fresh;
}
