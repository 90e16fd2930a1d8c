import type { Problem } from '#core/problems';
import { adjustSurvey } from '#core/measuring';
import { readCsv, readReadings } from '#formats/csv';

/** What is wrong with a table: of readings, what `measure` would say; of anything else its form. */
export function checkTable(text: string): readonly Problem[] {
  const heading =
    text
      .split(/\r\n|\r|\n/, 1)[0]
      ?.toLowerCase()
      .split(/[,;\t]/) ?? [];
  if (!heading.includes('id') || !heading.includes('value')) return checkCsv(text);
  const table = readReadings(text);
  if (!table.ok) return table.problems;
  const { readings, seenFrom } = table.value;
  const { findings } = adjustSurvey({ seenFrom: seenFrom ?? '', readings }).adjustment;
  return [...table.problems, ...findings];
}

/** What is wrong with a table: no rows, rows of another length than the heading, numbers that are none. */
function checkCsv(text: string): readonly Problem[] {
  const [header, ...rows] = readCsv(text);
  if (!header || header.length < 2)
    return [fault('csv-empty', 'The table has no heading with at least two columns.', '')];
  return rows.flatMap((row, index): Problem[] => {
    const about = `row ${index + 2}`;
    if (row.length !== header.length)
      return [
        fault(
          'csv-uneven',
          `Row ${index + 2} has ${row.length} cells, the heading has ${header.length}.`,
          about,
        ),
      ];
    return row.flatMap((cell, column) => {
      const name = header[column] ?? '';
      const isNumber = / mm$/.test(name) && name !== 'size mm';
      return isNumber && cell !== '' && !/^-?\d+(\.\d+)?$/.test(cell)
        ? [fault('csv-not-a-number', `"${cell}" under "${name}" in row ${index + 2} is no number.`, about)]
        : [];
    });
  });
}

/** What is wrong with a drawing: not SVG, cut off, tags that do not close, no true size. */
export function checkSvg(text: string): readonly Problem[] {
  const root = /<svg\b[^>]*>/.exec(text)?.[0];
  if (root === undefined) return [fault('svg-missing', 'There is no <svg> element in the file.', '')];
  const open = unclosedTag(text);
  return [
    ...(open === null ? [] : [fault('svg-broken', `The drawing is cut off or damaged at <${open}>.`, '')]),
    ...(/\bwidth="[\d.]+mm"/.test(root) && /\bheight="[\d.]+mm"/.test(root)
      ? []
      : [
          {
            severity: 'warn' as const,
            code: 'svg-no-size',
            message: 'The drawing does not state its size in mm, so it may be printed at another scale.',
          },
        ]),
    ...(/<script\b|\son\w+=|(href|src)="(?!#)/i.test(root + text)
      ? [fault('svg-active', 'The drawing holds a script or refers to something outside itself.', '')]
      : []),
  ];
}

/** Name of the first tag that is closed wrongly or not at all; null when all is well. */
function unclosedTag(text: string): string | null {
  const open: string[] = [];
  const bare = text.replace(/<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<![^>]*>/g, '');
  for (const [, closing, name = '', own] of bare.matchAll(
    /<(\/?)([A-Za-z][\w:-]*)(?:"[^"]*"|'[^']*'|[^<>"'])*?(\/?)>/g,
  )) {
    if (closing === '/') {
      if (open.pop() !== name) return name;
    } else if (own !== '/') open.push(name);
  }
  return open.at(-1) ?? null;
}

function fault(code: string, message: string, about: string): Problem {
  return {
    severity: 'stop',
    code,
    ...(about !== '' && { about }),
    message,
    remedy: 'Write the file again.',
  };
}
