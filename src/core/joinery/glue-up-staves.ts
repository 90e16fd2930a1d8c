import { formatNumber } from '#core/units';
import type { Panel } from './glue-up-panels.ts';
import type { Part, PartSize } from './types.ts';
import type { WorkingBook } from './working.ts';

const source = 'joinery D4, C16';

/** The part with its staves; the book gets how many, and their size. */
export function makeUp(panel: Panel, book: WorkingBook): Part {
  const { part, leaves } = panel;
  const names = namesOf(panel, book);
  const count = countStaves(panel, names, book);
  const size = sizeBlank(panel, names, book);
  const isAcross = part.grain === 'along-width';
  return {
    ...part,
    rough: isAcross ? { ...size, length: size.width, width: size.length } : size,
    staves: {
      ...{ count, width: panel.width / count, ...(leaves === 2 && { leaves }) },
      working: {
        ...{ count: names.own('n'), length: names.own('stave_L'), width: names.own('stave_W') },
        thickness: names.own('stave_T'),
      },
    },
    notes: [...part.notes.filter((note) => !note.startsWith('Jointed from boards')), markNote(count, leaves)],
  };
}

/** The fewest staves that fit the boards and stay flat; leaves come in pairs. */
function countStaves(
  { board, flat, leaves }: Panel,
  { width, own, about }: Names,
  book: WorkingBook,
): number {
  const rules = [
    ...(board === null ? [] : [`up((${width} + 4)/(${own('board')} - 2), 1)`]),
    ...(flat === null ? [] : [`up(${width}/${own('flat')}, 1)`]),
  ];
  if (board !== null) book.put(own('board'), board, about('widest board for its staves, trimmed'), 'rack');
  if (flat !== null)
    book.put(own('flat'), flat, about('widest flat-sawn board in it'), 'setting, joinery D3');
  const least = `max(${['2', ...rules].join(', ')})`;
  const rule = leaves === 2 ? `2*up(${least}/2, 1)` : least;
  return book.work(own('n'), rule, about('staves'), source, 'count');
}

/** The blank of a stave, or of two leaves (joinery D3, D4). */
function sizeBlank(
  { state, leaves }: Panel,
  { length, width, thickness, own, about }: Names,
  book: WorkingBook,
): PartSize {
  const shared = `up((${width} + 6 + 2*(${own('n')} - 1))/${own('n')}, 1)`;
  const thick = state === 'sawn' ? `${thickness} + 5` : thickness;
  return {
    length: book.work(own('stave_L'), `up(${length} + 25, 1)`, about('stave, length'), source),
    width: book.work(own('stave_W'), shared, about('stave, width'), source),
    thickness:
      leaves === 2
        ? book.work(
            own('stave_T'),
            `2*${thickness} + 5.5`,
            about('blank of two leaves, thickness'),
            'joinery D3',
          )
        : book.work(own('stave_T'), thick, about('stave, thickness'), source),
  };
}

function markNote(count: number, leaves: 1 | 2): string {
  if (leaves === 2)
    return `Book-matched of ${formatNumber(count)} leaves: each blank is sawn through its thickness and opened about the joint, one leaf the mirror image of the other; a triangle is drawn across the joints of the face side.`;
  return `Glued up of ${formatNumber(count)} staves edge to edge, rings up and down in turn; a triangle is drawn across the joints of the face side.`;
}

/** Names in the working: of its sizes as they leave the saw, of its own steps, and what those are called. */
interface Names {
  readonly length: string;
  readonly width: string;
  readonly thickness: string;
  readonly own: (what: string) => string;
  readonly about: (what: string) => string;
}

function namesOf({ part, length, width }: Panel, book: WorkingBook): Names {
  const { grain, working, cut, id } = part;
  const [along, across] =
    grain === 'along-width' ? [working.width, working.length] : [working.length, working.width];
  const own = (what: string) => `glue_${id.replace(/^\D+/, '')}_${what}`;
  const about = (what: string) => `${part.name}: ${what}`;
  return {
    length: nameSize(book, [along, own('length')], length, about('length leaving the saw')),
    width: nameSize(book, [across, own('width')], width, about('width leaving the saw')),
    thickness: nameSize(book, [working.thickness, own('T')], cut.thickness, about('thickness')),
    ...{ own, about },
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
