import type { Point } from '#core/geometry';
import type { DrawnPath } from '#core/pipeline';
import type { Element } from '@xmldom/xmldom';
import svgpath from 'svgpath';

import { flattenCubic } from './flatten-path.ts';
import type { Walk } from './walk.ts';

/** The lines of one drawn element; none when it is no line, with a finding when its data cannot be read. */
export function readElement(element: Element, walk: Walk): readonly DrawnPath[] {
  const data = pathOf(element);
  if (data === null) return [];
  const path = svgpath(data).transform(walk.transform).abs().unshort().unarc();
  const fault = (path as unknown as { readonly err?: string }).err;
  if (fault)
    walk.findings.push({
      severity: 'warn',
      code: 'svg-path-broken',
      message: `The data of a <${element.nodeName}> on the layer "${walk.layer}" is broken and was read up to there: ${fault.replace(/^SvgPath: /, '')}.`,
      remedy: 'Look whether the outline is whole.',
    });
  return split(path, walk);
}

/** The path data that draws the same as an element. */
function pathOf(element: Element): string | null {
  const n = (name: string): number => Number.parseFloat(element.getAttribute(name) ?? '0') || 0;
  switch (element.localName) {
    case 'path':
      return element.getAttribute('d') ?? null;
    case 'rect':
      return rectanglePath({
        ...{ x: n('x'), y: n('y'), width: n('width'), height: n('height') },
        radii: [n('rx'), n('ry')],
      });
    case 'circle':
      return ellipsePath(n('cx'), n('cy'), n('r'), n('r'));
    case 'ellipse':
      return ellipsePath(n('cx'), n('cy'), n('rx'), n('ry'));
    case 'line':
      return `M${n('x1')} ${n('y1')}L${n('x2')} ${n('y2')}`;
    case 'polyline':
      return `M${element.getAttribute('points') ?? ''}`;
    case 'polygon':
      return `M${element.getAttribute('points') ?? ''}Z`;
    default:
      return null;
  }
}

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly radii: readonly [number, number];
}

function rectanglePath({ x, y, width, height, radii }: Rectangle): string | null {
  if (width <= 0 || height <= 0) return null;
  const rx = Math.min(radii[0] || radii[1], width / 2);
  const ry = Math.min(radii[1] || radii[0], height / 2);
  if (rx === 0) return `M${x} ${y}h${width}v${height}h${-width}Z`;
  const arc = (dx: number, dy: number): string => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
  return `M${x + rx} ${y}h${width - 2 * rx}${arc(rx, ry)}v${height - 2 * ry}${arc(-rx, ry)}h${2 * rx - width}${arc(-rx, -ry)}v${2 * ry - height}${arc(rx, -ry)}Z`;
}

function ellipsePath(cx: number, cy: number, rx: number, ry: number): string | null {
  if (rx <= 0 || ry <= 0) return null;
  return `M${cx - rx} ${cy}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0Z`;
}

/** The parts of a path between its moves, curves as chords. */
function split(path: ReturnType<typeof svgpath>, { layer, tolerance }: Walk): readonly DrawnPath[] {
  const parts: { points: Point[]; closed: boolean }[] = [];
  const add = (...points: readonly Point[]): void => {
    const last = parts.at(-1);
    if (last && !last.closed) last.points.push(...points);
    // after a closing the pen stands where that part began
    else parts.push({ points: [...(last?.points.slice(0, 1) ?? []), ...points], closed: false });
  };
  path.iterate((segment, _at, x, y) => {
    const from = { x, y };
    const [command, ...n] = segment as readonly [string, ...number[]];
    const at = (k: number): Point => ({ x: n[k] ?? 0, y: n[k + 1] ?? 0 });
    if (command === 'M') parts.push({ points: [at(0)], closed: false });
    else if (command === 'L') add(at(0));
    else if (command === 'H') add({ x: n[0] ?? 0, y });
    else if (command === 'V') add({ x, y: n[0] ?? 0 });
    else if (command === 'C') add(...flattenCubic([from, at(0), at(2), at(4)], tolerance));
    else if (command === 'Q') add(...flattenCubic(raise(from, at(0), at(2)), tolerance));
    else if (command === 'Z' || command === 'z') close(parts);
  });
  return parts.filter(({ points }) => points.length > 1).map((part) => ({ layer, ...part }));
}

function close(parts: readonly { closed: boolean }[]): void {
  const last = parts.at(-1);
  if (last) last.closed = true;
}

/** A quadratic curve as the cubic that draws the same. */
function raise(a: Point, b: Point, c: Point): readonly [Point, Point, Point, Point] {
  const mix = (p: Point, q: Point): Point => ({ x: (p.x + 2 * q.x) / 3, y: (p.y + 2 * q.y) / 3 });
  return [a, mix(a, b), mix(c, b), c];
}
