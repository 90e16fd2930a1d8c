import { drawRouterFiles } from '#core/drawing';
import type { Part } from '#core/joinery';
import type { OutputFile } from '#core/pipeline';
import { hasStop, type Problem } from '#core/problems';

import type { BundleContext } from './bundle-context.ts';
import { isRectangle } from './is-rectangle.ts';

/** Router files, what was found while drawing them, and the names of those withheld, without their endings, because of a `stop`. */
export interface RouterFiles {
  readonly files: readonly OutputFile[];
  readonly findings: readonly Problem[];
  readonly withheld: readonly string[];
}

/** DXF and SVG for every part a router would be used on: sheet parts, shaped ones, and those machined on their faces. */
export function writeRouterFiles({ project, understanding, blocked }: BundleContext): RouterFiles {
  const files: OutputFile[] = [];
  const findings: Problem[] = [];
  const withheld: string[] = [];
  for (const part of understanding.pieces.flatMap((piece) => piece.parts).filter(isRouted)) {
    for (const file of drawRouterFiles(part, project.tools.router)) {
      findings.push(...file.findings);
      const paths = [`router/${file.name}.dxf`, `router/${file.name}.svg`] as const;
      if (blocked.has(part.id) || hasStop(file.findings)) withheld.push(file.name);
      else files.push({ path: paths[0], content: file.dxf }, { path: paths[1], content: file.svg });
    }
  }
  return { files, findings: [...findings, ...reportWithheld(withheld)], withheld };
}

function isRouted(part: Part): boolean {
  const isWorkedOnFace = part.machining.some(
    (each) => each.kind !== 'bevel' && (each.from === 'face' || each.from === 'back'),
  );
  return part.kind === 'sheet' || !isRectangle(part) || part.holes.length > 0 || isWorkedOnFace;
}

function reportWithheld(withheld: readonly string[]): readonly Problem[] {
  if (withheld.length === 0) return [];
  return [
    {
      severity: 'note',
      code: 'router-files-withheld',
      message: `Router files are withheld (.dxf and .svg), because what they would cut is stopped by a finding: ${withheld.join(', ')}.`,
      remedy: 'Settle the findings marked "stop" and plan again.',
    },
  ];
}
