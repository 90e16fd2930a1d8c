import type { DrawnFile, DrawnPath } from '#core/pipeline';
import { fail, succeed, type Problem, type Result } from '#core/problems';
import { DOMParser, onErrorStopParsing, type Element, type Node } from '@xmldom/xmldom';

import { readElement } from './read-element.ts';
import { readLength } from './svg-length.ts';
import type { Walk } from './walk.ts';

/** Larger files than this are no outline, characters. */
const largest = 20_000_000;

/**
 * The lines of an SVG text with their layers, in its user units, y up; curves as chords within 0.02 mm. Fails when it is no SVG.
 * What is not drawn (definitions, hidden groups, text, pictures) is left out.
 */
export function readSvgDrawing(text: string): Result<DrawnFile> {
  if (text.length > largest)
    return fail(broken(`is ${Math.round(text.length / 1e6)} MB large, more than can be an outline`));
  const root = parse(text);
  if (typeof root === 'string') return fail(broken(root));
  if (root.localName !== 'svg') return fail(broken(`begins with <${root.nodeName}>, not with <svg>`));
  const unit = unitOf(root);
  const findings: Problem[] = [];
  const walk = { tolerance: 0.02 / (unit ?? 25.4 / 96), findings };
  const paths = walkChildren(root, { ...walk, layer: '', transform: '' });
  return succeed({ paths: paths.map(standUp), unit, findings });
}

/** The root element, or what is wrong with the text. */
function parse(text: string): Element | string {
  try {
    const document = new DOMParser({ onError: onErrorStopParsing }).parseFromString(text, 'image/svg+xml');
    return document.documentElement ?? 'is empty';
  } catch (error) {
    return `cannot be read: ${error instanceof Error ? (error.message.split('\n')[0] ?? '') : 'it is damaged'}`;
  }
}

/** mm for a user unit, by the width of the picture and of its view box; null when it has no length of its own. */
function unitOf(root: Element): number | null {
  const width = readLength(root.getAttribute('width') ?? '');
  const height = readLength(root.getAttribute('height') ?? '');
  const box = (root.getAttribute('viewBox') ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [, , across = NaN, up = NaN] = box;
  if (width?.isReal === true) return across > 0 ? width.millimetres / across : width.perUnit;
  if (height?.isReal === true) return up > 0 ? height.millimetres / up : height.perUnit;
  return null;
}

const unseen = [
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'marker',
  'pattern',
  'style',
  'metadata',
  'title',
  'desc',
  'script',
];

function walkChildren(parent: Element, walk: Walk): readonly DrawnPath[] {
  const paths: DrawnPath[] = [];
  for (let node: Node | null = parent.firstChild; node; node = node.nextSibling)
    if (isElement(node)) paths.push(...walkElement(node, walk));
  return paths;
}

function isElement(node: Node): node is Element {
  return node.nodeType === 1;
}

function walkElement(element: Element, walk: Walk): readonly DrawnPath[] {
  const name = element.localName ?? '';
  if (unseen.includes(name) || isHidden(element)) return [];
  const transform = [walk.transform, element.getAttribute('transform') ?? ''].join(' ').trim();
  if (['g', 'svg', 'a', 'switch'].includes(name))
    return walkChildren(element, { ...walk, transform, layer: nameOf(element) ?? walk.layer });
  return readElement(element, { ...walk, transform });
}

function isHidden(element: Element): boolean {
  const style = (element.getAttribute('style') ?? '').replace(/\s/g, '');
  return (
    element.getAttribute('display') === 'none' ||
    element.getAttribute('visibility') === 'hidden' ||
    /display:none|visibility:hidden/.test(style)
  );
}

/** The name of a group: a label that a drawing program gave it, else its id. */
function nameOf(element: Element): string | null {
  for (let at = 0; at < element.attributes.length; at += 1) {
    const attribute = element.attributes.item(at);
    if (attribute?.localName === 'label' && attribute.value !== '') return attribute.value;
  }
  return element.getAttribute('id') ?? null;
}

/** y runs down in the file. */
function standUp({ layer, points, closed }: DrawnPath): DrawnPath {
  return { layer, closed, points: points.map(({ x, y }) => ({ x, y: 0 - y })) };
}

function broken(what: string): Problem {
  return {
    severity: 'stop',
    code: 'svg-unreadable',
    message: `The SVG file ${what}.`,
    remedy: 'Save the drawing again as plain SVG.',
  };
}
