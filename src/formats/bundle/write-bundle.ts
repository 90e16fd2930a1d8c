import {
  findBlocked,
  listParts,
  listShopping,
  makePlanFile,
  summarise,
  tableOfShopping,
  withCarrying,
  writeTrips,
  type OutputFile,
  type Table,
  sayFindings,
} from '#core/pipeline';
import { sortBySeverity, type Problem } from '#core/problems';
import { writeCsv } from '#formats/csv';
import { writeJson } from '#formats/json';
import { writePdf } from '#formats/pdf';

import type { BundleContext, BundleSource } from './bundle-context.ts';
import { writeCuttingSvgs } from './cutting-files.ts';
import { drawPages, type PageSets } from './draw-pages.ts';
import { writeRouterFiles } from './router-files.ts';

/** A bundle with what was found while drawing it. */
export interface Bundle {
  readonly files: readonly OutputFile[];
  readonly findings: readonly Problem[];
}

/**
 * Every file of a plan: lists, diagrams, router files, templates, labels. What a `stop` concerns is stamped, its router files
 * are withheld and named. The same project and plans give the same bytes.
 */
export async function makeBundle(given: BundleSource): Promise<Bundle> {
  const { project, planned, routed, fonts } = given;
  const understanding = withCarrying(project, given.understanding);
  const source = { ...given, understanding };
  const blocked = findBlocked(project, understanding, planned);
  const context: BundleContext = { ...source, blocked };
  const router = writeRouterFiles(context);
  const findings = sayFindings(
    project,
    sortBySeverity([
      ...understanding.findings,
      ...[...planned, ...routed].flatMap(({ plan }) => plan.findings),
      ...router.findings,
    ]),
  );
  const pages = drawPages(source);
  const pdf = async (name: keyof PageSets): Promise<OutputFile> => ({
    path: `${name}.pdf`,
    content: await writePdf(pages[name], { title: `${project.name}: ${name.replace('-', ' ')}`, fonts }),
  });
  const files: readonly OutputFile[] = [
    table('parts.csv', listParts(project, understanding, planned, routed)),
    table('shopping.csv', tableOfShopping(project, listShopping(project, understanding, planned, routed))),
    {
      path: 'summary.txt',
      content: summarise(project, understanding, planned, { findings, withheld: router.withheld, routed }),
    },
    {
      path: 'plan.json',
      content: writeJson(makePlanFile(project, understanding, planned, { findings, routed })),
    },
    ...writeCuttingSvgs(context),
    await pdf('checklists'),
    await pdf('cutting'),
    ...router.files,
    await pdf('templates'),
    await pdf('labels'),
    await pdf('part-sheets'),
    { path: 'trips.txt', content: writeTrips(project, understanding, planned) },
  ];
  return { files, findings };
}

function table(path: string, { header, rows }: Table): OutputFile {
  return { path, content: writeCsv(header, rows) };
}
