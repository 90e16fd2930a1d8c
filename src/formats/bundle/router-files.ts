import { drawPairFile, drawRouterFiles, drawRouterSheet, isRectangle, type RouterSetup } from '#core/drawing';
import type { Part } from '#core/joinery';
import { partsOnSheet, viewNest, viewPairs, type OutputFile } from '#core/pipeline';
import { hasStop, type Problem } from '#core/problems';
import type { Project } from '#core/project';

import type { BundleContext } from './bundle-context.ts';
import { uniqueNames } from './file-name.ts';

/** Router files, what was found while drawing them, and the names of those withheld, without their endings, because of a `stop`. */
export interface RouterFiles {
  readonly files: readonly OutputFile[];
  readonly findings: readonly Problem[];
  readonly withheld: readonly string[];
}

/** DXF and SVG for every part a router would be used on: sheet parts, shaped ones, and those machined on their faces. */
export function writeRouterFiles(context: BundleContext): RouterFiles {
  const { project, understanding, blocked } = context;
  const files: OutputFile[] = [];
  const findings: Problem[] = [];
  const withheld: string[] = [];
  for (const part of understanding.pieces.flatMap((piece) => piece.parts).filter(isRouted)) {
    for (const file of drawRouterFiles(part, setupOf(project))) {
      findings.push(...file.findings);
      const paths = [`router/${file.name}.dxf`, `router/${file.name}.svg`] as const;
      if (blocked.has(part.id) || hasStop(file.findings)) withheld.push(file.name);
      else files.push({ path: paths[0], content: file.dxf }, { path: paths[1], content: file.svg });
    }
  }
  const sheets = writeSheets(context);
  const pairs = writePairs(context);
  withheld.push(...sheets.withheld, ...pairs.withheld);
  return {
    files: [...files, ...sheets.files, ...pairs.files],
    findings: [...findings, ...reportWithheld(withheld)],
    withheld,
  };
}

/** The router of a project; its notes are told in the units of the project. */
function setupOf({ tools, units }: Project): RouterSetup {
  return { ...tools.router, units };
}

/** A file for each sheet of parts laid by their outlines; withheld as a whole where one of them must not be cut. */
function writeSheets({
  project,
  understanding,
  routed,
  blocked,
}: BundleContext): Omit<RouterFiles, 'findings'> {
  const files: OutputFile[] = [];
  const withheld: string[] = [];
  const names = uniqueNames(routed.map(({ group }) => group.id));
  for (const planned of routed)
    planned.plan.sheets.forEach((_, sheet) => {
      const { title, stock } = viewNest(understanding, planned, sheet, { width: 100 });
      const placed = partsOnSheet(understanding, planned, sheet);
      const name = `sheet-${names.get(planned.group.id)}-${sheet + 1}`;
      if (placed.some(({ part }) => blocked.has(part.id))) return void withheld.push(name);
      const { dxf, svg } = drawRouterSheet({ title, stock, placed }, project.tools.router);
      files.push({ path: `router/${name}.dxf`, content: dxf }, { path: `router/${name}.svg`, content: svg });
    });
  return { files, withheld };
}

/** A file for each blank that two shapes share; withheld where one of them must not be cut. */
function writePairs({ project, understanding, blocked }: BundleContext): Omit<RouterFiles, 'findings'> {
  const files: OutputFile[] = [];
  const withheld: string[] = [];
  const pairs = viewPairs(understanding);
  const names = uniqueNames(pairs.map(({ id }) => `pair-${id}`));
  for (const pair of pairs) {
    const name = names.get(`pair-${pair.id}`);
    if (name === undefined) continue;
    if (pair.laid.some(({ part }) => blocked.has(part.id))) withheld.push(name);
    else {
      const { dxf, svg } = drawPairFile(pair, project.tools.router);
      files.push({ path: `router/${name}.dxf`, content: dxf }, { path: `router/${name}.svg`, content: svg });
    }
  }
  return { files, withheld };
}

function isRouted(part: Part): boolean {
  if (part.bent) return false;
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
