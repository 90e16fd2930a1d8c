import {
  findBlocked,
  listParts,
  listShopping,
  makePlanFile,
  summarise,
  tableOfShopping,
  writeTrips,
  type OutputFile,
  type Table,
} from '#core/pipeline';
import { sortBySeverity, type Problem } from '#core/problems';
import { writeCsv } from '#formats/csv';
import { writeJson } from '#formats/json';
import { writePdf } from '#formats/pdf';

import type { BundleContext, BundleSource } from './bundle-context.ts';
import { drawCuttingPages, writeCuttingSvgs } from './cutting-files.ts';
import { drawLabelPages } from './label-pages.ts';
import { drawPartSheets } from './part-sheets.ts';
import { writeRouterFiles } from './router-files.ts';
import { drawTemplatePages } from './template-pages.ts';

/** A bundle with what was found while drawing it. */
export interface Bundle {
  readonly files: readonly OutputFile[];
  readonly findings: readonly Problem[];
}

/**
 * Every file of a plan: lists, diagrams, router files, templates, labels. What a `stop` concerns is stamped, its router files
 * are withheld and named. The same project and plans give the same bytes.
 */
export async function makeBundle(source: BundleSource): Promise<Bundle> {
  const { project, understanding, planned, fonts } = source;
  const blocked = findBlocked(project, understanding, planned);
  const context: BundleContext = { ...source, blocked };
  const router = writeRouterFiles(context);
  const findings = sortBySeverity([
    ...understanding.findings,
    ...planned.flatMap(({ plan }) => plan.findings),
    ...router.findings,
  ]);
  const pdf = (title: string, pages: Parameters<typeof writePdf>[0]): Promise<Uint8Array> =>
    writePdf(pages, { title: `${project.name}: ${title}`, fonts });
  const files: readonly OutputFile[] = [
    table('parts.csv', listParts(project, understanding, planned)),
    table('shopping.csv', tableOfShopping(project, listShopping(project, understanding, planned))),
    {
      path: 'summary.txt',
      content: summarise(project, understanding, planned, { findings, withheld: router.withheld }),
    },
    { path: 'plan.json', content: writeJson(makePlanFile(project, understanding, planned, findings)) },
    ...writeCuttingSvgs(context),
    { path: 'cutting.pdf', content: await pdf('cutting diagrams', drawCuttingPages(context)) },
    ...router.files,
    { path: 'templates.pdf', content: await pdf('templates', drawTemplatePages(context)) },
    { path: 'labels.pdf', content: await pdf('labels', drawLabelPages(context)) },
    { path: 'part-sheets.pdf', content: await pdf('part sheets', drawPartSheets(context)) },
    { path: 'trips.txt', content: writeTrips(project, understanding, planned) },
  ];
  return { files, findings };
}

/** Only the files of `makeBundle`. */
export async function writeBundle(source: BundleSource): Promise<readonly OutputFile[]> {
  return (await makeBundle(source)).files;
}

function table(path: string, { header, rows }: Table): OutputFile {
  return { path, content: writeCsv(header, rows) };
}
