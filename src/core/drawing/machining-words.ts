import { boxOfOutline, type Box } from '#core/geometry';
import type { Machining, Part, PartFace } from '#core/joinery';
import { unreachable } from '#core/problems';
import type { LengthSystem } from '#core/units';
import { formatMm, formatSize } from './scales.ts';

type Of<K extends Machining['kind']> = Extract<Machining, { kind: K }>;

const faceNames: Record<Of<'hole'>['from'], string> = {
  face: 'the face side',
  back: 'the back',
  'face-edge': 'the face edge',
  'far-edge': 'the far edge',
  start: 'the start end',
  end: 'the far end',
};

/** One line that says what a machining is, where it lies and how deep, in mm unless another unit is asked for. */
export function describeMachining(machining: Machining, part: Part, units: LengthSystem = 'mm'): string {
  const note = machining.note ? ` (${machining.note})` : '';
  switch (machining.kind) {
    case 'recess': {
      const { what, x, y, z } = recessWords(machining, part, units);
      return `${what}: ${x}, y ${y}, ${z}${note}`;
    }
    case 'prism':
      return `${machining.name.replace('-', ' ')} ${prismWords(machining, units)}${note}`;
    case 'hole': {
      const { what, at, depth } = holeWords(machining, units);
      return `${what} at ${at}, ${depth}${note}`;
    }
    case 'bevel':
      return `${faceNames[machining.edge]} sawn ${formatMm(Math.abs(machining.degrees))}° off square, ${machining.degrees > 0 ? 'the back' : 'the face side'} is the longer side${note}`;
    default:
      return unreachable(machining);
  }
}

function prismWords({ name, from, below = 0, depth, outline }: Of<'prism'>, units: LengthSystem): string {
  const at = name === 'slot' ? `${whereWords(from, boxOfOutline(outline), units)}, ` : '';
  if (below <= 0) return `from ${faceNames[from]}: ${at}${formatSize(depth, units)} deep`;
  return `within: ${at}${formatSize(below, units)}–${formatSize(depth, units)} from ${faceNames[from]}`;
}

/** Extent of an outline in the plane of a face, along the axes that lie in it. */
function whereWords(face: PartFace, { minX, minY, maxX, maxY }: Box, units: LengthSystem): string {
  const ends = face === 'start' || face === 'end';
  const [one, other] = ends ? ['y', 'z'] : ['x', face === 'face' || face === 'back' ? 'y' : 'z'];
  const show = (value: number) => formatSize(Math.max(0, value), units);
  return `${one} ${show(minX)}–${show(maxX)}, ${other} ${show(minY)}–${show(maxY)}`;
}

/** `full` where a recess reaches from side to side. */
function rangeOf([low, high]: readonly [number, number], size: number, units: LengthSystem): string {
  if (low <= 0 && high >= size) return 'full';
  return `${formatSize(Math.max(0, low), units)}–${formatSize(Math.min(size, high), units)}`;
}

function recessWords({ name, from, box }: Of<'recess'>, part: Part, units: LengthSystem) {
  const { length, width, thickness } = part.finished;
  const through = box.min.z <= 0 && box.max.z >= thickness;
  return {
    what: `${name} from ${faceNames[from]}`,
    x: `x ${rangeOf([box.min.x, box.max.x], length, units)}`,
    y: rangeOf([box.min.y, box.max.y], width, units),
    z: through ? 'right through' : `${rangeOf([box.min.z, box.max.z], thickness, units)} from the face side`,
  };
}

function holeWords(hole: Of<'hole'>, units: LengthSystem) {
  const show = (value: number) => formatSize(value, units);
  const depth = hole.depth === 'through' ? 'through' : `${show(hole.depth)} deep`;
  const sink = hole.countersink ? `, countersunk to Ø${show(hole.countersink)}` : '';
  return {
    what: `hole Ø${show(hole.diameter)} in ${faceNames[hole.from]}`,
    at: `${show(hole.x)}, ${show(hole.y)}`,
    depth: `${depth}${sink}`,
  };
}

/** The machining of a part as numbered lines; neighbours that differ in one place only share a line. */
export function listMachining(part: Part, units: LengthSystem = 'mm'): readonly string[] {
  return joinAlike(part.machining, part, units).map(({ first, last, text }) => {
    const number = first === last ? String(first) : `${first}–${last}`;
    return `${number}  ${text}`;
  });
}

/** Machinings in words, in a row: neighbours that differ in one place only are told together. */
export function joinAlike(
  work: readonly Machining[],
  part: Part,
  units: LengthSystem = 'mm',
): readonly { readonly first: number; readonly last: number; readonly text: string }[] {
  const lines: {
    first: number;
    last: number;
    key: string;
    places: string[];
    text: (places: string) => string;
  }[] = [];
  work.forEach((machining, i) => {
    const { key, place, text } = splitWords(machining, part, units);
    const last = lines.at(-1);
    if (last && key !== '' && last.key === key) {
      last.last = i + 1;
      last.places.push(place);
    } else lines.push({ first: i + 1, last: i + 1, key, places: [place], text });
  });
  return lines.map(({ first, last, places, text }) => ({ first, last, text: text(places.join('; ')) }));
}

/** The place in which repeated machinings differ, apart from all else they say; an empty key never joins. */
function splitWords(machining: Machining, part: Part, units: LengthSystem) {
  const note = machining.note ? ` (${machining.note})` : '';
  if (machining.kind === 'recess') {
    const { what, x, y, z } = recessWords(machining, part, units);
    const text = (places: string) => `${what}: ${x}, y ${places}, ${z}${note}`;
    return { key: `${what} ${x} ${z}${note}`, place: y, text };
  }
  if (machining.kind === 'hole') {
    const { what, at, depth } = holeWords(machining, units);
    return {
      key: `${what} ${depth}${note}`,
      place: at,
      text: (places: string) => `${what} at ${places}, ${depth}${note}`,
    };
  }
  return { key: '', place: '', text: () => describeMachining(machining, part, units) };
}
