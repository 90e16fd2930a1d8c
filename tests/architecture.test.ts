import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

/** Which area may import which others, and which packages are its own. Everything not named here is refused. */
const areas: Readonly<
  Record<string, { readonly uses: readonly string[]; readonly packages?: readonly string[] }>
> = {
  'core/problems': { uses: [] },
  'core/units': { uses: ['core/problems'] },
  'core/geometry': { uses: ['core/problems'], packages: ['clipper2-ts'] },
  'core/numerics': { uses: ['core/problems'], packages: ['ml-matrix', 'pure-rand'] },
  'core/materials': { uses: ['core/problems'] },
  'core/measuring': { uses: tier('problems', 'units', 'geometry', 'numerics', 'materials') },
  'core/joinery': { uses: tier('problems', 'units', 'geometry', 'numerics', 'materials') },
  'core/cutting': { uses: tier('problems', 'units', 'geometry', 'numerics', 'materials') },
  'core/nesting': { uses: tier('problems', 'units', 'geometry', 'numerics', 'materials') },
  'core/finishing': { uses: tier('problems', 'units', 'geometry', 'numerics', 'materials') },
  'core/visits': { uses: tier('problems', 'units', 'geometry', 'numerics', 'materials') },
  'core/fitting': { uses: belowFour() },
  'core/drawing': { uses: belowFour(), packages: ['makerjs'] },
  'core/project': { uses: belowFour() },
  'core/pipeline': { uses: [...belowFour(), 'core/fitting', 'core/drawing', 'core/project'] },
  'formats/svg': { uses: allOfCore(), packages: ['@xmldom/xmldom', 'svgpath'] },
  'formats/dxf': { uses: allOfCore(), packages: ['dxf-parser'] },
  'formats/pdf': { uses: allOfCore(), packages: ['pdfkit', 'dejavu-fonts-ttf', 'node:fs', 'node:module'] },
  'formats/csv': { uses: allOfCore() },
  'formats/json': { uses: allOfCore(), packages: ['valibot', '@valibot/to-json-schema'] },
  'formats/bundle': {
    uses: [...allOfCore(), 'formats/svg', 'formats/dxf', 'formats/pdf', 'formats/csv', 'formats/json'],
  },
  'solver/glpk': { uses: tier('problems', 'numerics', 'cutting'), packages: ['glpk.js/node', 'glpk.js'] },
  'solver/crew': { uses: [] },
  'solver/worker': {
    uses: [...tier('problems', 'numerics', 'cutting', 'nesting'), 'solver/glpk', 'solver/crew'],
    packages: ['comlink'],
  },
  'solver/threads': {
    uses: [...tier('problems', 'numerics', 'cutting', 'nesting'), 'solver/glpk', 'solver/crew'],
    packages: ['node:*'],
  },
  'storage/browser': { uses: tier('problems', 'project'), packages: ['idb'] },
  'storage/file': { uses: tier('problems', 'project') },
  cli: { uses: [...allOfCore(), ...formats(), 'solver/glpk', 'solver/threads'], packages: ['node:*'] },
  app: {
    uses: [...allOfCore(), ...formats(), 'solver/worker', 'storage/browser', 'storage/file'],
    packages: [
      'svelte',
      'svelte/*',
      '$app/*',
      'fflate',
      'three',
      'three/*',
      '@fontsource/*',
      'dejavu-fonts-ttf',
    ],
  },
  routes: {
    uses: [...allOfCore(), ...formats(), 'app'],
    // node: pages made when the app is built, as the notices of its packages
    packages: ['svelte', 'svelte/*', '$app/*', './$types', '@sveltejs/kit', 'node:*'],
  },
  'service-worker': { uses: [], packages: ['$service-worker'] },
};

function tier(...names: readonly string[]): string[] {
  return names.map((name) => `core/${name}`);
}
function belowFour(): string[] {
  return tier(
    ...['problems', 'units', 'geometry', 'numerics', 'materials'],
    ...['measuring', 'joinery', 'cutting', 'nesting', 'finishing', 'visits'],
  );
}
function allOfCore(): string[] {
  return [...belowFour(), ...tier('fitting', 'drawing', 'project', 'pipeline')];
}
function formats(): string[] {
  return ['svg', 'dxf', 'pdf', 'csv', 'json', 'bundle'].map((name) => `formats/${name}`);
}

const src = resolve('src');
const files = readdirSync(src, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.(ts|svelte|js)$/.test(entry.name))
  .map((entry) => join(entry.parentPath, entry.name));

function areaOf(file: string): string {
  const path = relative(src, file).split(sep);
  const two = path.slice(0, 2).join('/');
  return two in areas ? two : (path[0] ?? '');
}

function importsOf(file: string): readonly string[] {
  const text = readFileSync(file, 'utf8');
  const script = file.endsWith('.svelte')
    ? [...text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map((match) => match[1]).join('\n')
    : text;
  const found = ts.preProcessFile(script, true, true).importedFiles.map((imported) => imported.fileName);
  // `new URL('./x', import.meta.url)` brings a file in as well
  const urls = [...script.matchAll(/new URL\(\s*'([^']+)'\s*,\s*import\.meta\.url/g)].map(
    (match) => match[1] ?? '',
  );
  return [...found, ...urls.filter((url) => /\.(ts|js|svelte)$/.test(url))];
}

/** The area an import leads to, or the name of the package, and whether it goes through the door of the area. */
function resolveImport(file: string, name: string): { area?: string; package?: string; target?: string } {
  const plain = name.replace(/\?.*$/, '');
  const inner = /^#(core|formats|solver|storage)\/([\w-]+)$/.exec(plain);
  if (inner) return { area: `${inner[1]}/${inner[2]}` };
  if (/^#app\//.test(plain)) return { area: 'app' };
  if (/^#cli\//.test(plain)) return { area: 'cli' };
  if (!plain.startsWith('.')) return { package: name };
  if (plain === './$types') return { package: './$types' };
  const target = resolve(dirname(file), plain);
  return { area: areaOf(target), target };
}

const allows = (list: readonly string[] | undefined, name: string) =>
  (list ?? []).some((allowed) =>
    allowed.endsWith('*')
      ? name.startsWith(allowed.slice(0, -1))
      : name === allowed || name.startsWith(`${allowed}/`),
  );

describe('the house', () => {
  test('every source file lies in a declared area', () => {
    const loose = files.filter((file) => !(areaOf(file) in areas)).map((file) => relative(src, file));
    expect(loose.filter((file) => !/^app\.d\.ts$/.test(file))).toEqual([]);
  });

  test('imports go downwards only, and through the door', () => {
    const faults: string[] = [];
    for (const file of files) {
      const from = areaOf(file);
      const rule = areas[from];
      if (!rule) continue;
      for (const name of importsOf(file)) {
        const to = resolveImport(file, name);
        const where = `${relative(src, file)} imports ${name}`;
        if (to.package !== undefined && !allows(rule.packages, to.package.replace(/\?.*$/, '')))
          faults.push(`${where}: not its package`);
        if (to.area === undefined) continue;
        if (to.area !== from && !rule.uses.includes(to.area)) faults.push(`${where}: wrong direction`);
        if (to.area !== from && to.target) faults.push(`${where}: not through the door`);
        if (to.area === from && !to.target && from !== 'app')
          faults.push(`${where}: inside an area import the file`);
        if (
          to.area === from &&
          to.target &&
          /[/\\]index\.ts$/.test(to.target) &&
          !/[/\\]/.test(relative(join(src, from), to.target))
        )
          faults.push(`${where}: inside an area never import the index`);
        if (to.target && !existsSync(to.target)) faults.push(`${where}: no such file (write the extension)`);
      }
    }
    expect(faults).toEqual([]);
  });

  test('no file imports itself by a round-about way', () => {
    const graph = new Map(
      files.map((file) => [
        file,
        importsOf(file).flatMap((name) => {
          const to = resolveImport(file, name);
          if (to.target) return to.target === file ? [] : [to.target]; // a component may hold itself
          return to.area?.includes('/') ? [join(src, to.area, 'index.ts')] : [];
        }),
      ]),
    );
    const state = new Map<string, 'open' | 'done'>();
    const cycles: string[] = [];
    const visit = (file: string, trail: readonly string[]): void => {
      if (state.get(file) === 'done') return;
      if (state.get(file) === 'open') {
        cycles.push([...trail.slice(trail.indexOf(file)), file].map((f) => relative(src, f)).join(' -> '));
        return;
      }
      state.set(file, 'open');
      for (const next of graph.get(file) ?? []) visit(next, [...trail, file]);
      state.set(file, 'done');
    };
    for (const file of files) visit(file, []);
    expect(cycles).toEqual([]);
  });

  test('the paths named in the documents exist', () => {
    const missing = ['README.md', 'DEVELOPERS.md'].flatMap((document) =>
      [...readFileSync(document, 'utf8').matchAll(/`((?:src|tests|static|\.ci)\/[\w./*-]*)`/g)]
        .map((match) => match[1] ?? '')
        .filter((path) => !path.includes('*') && !existsSync(path))
        .map((path) => `${document}: ${path}`),
    );
    expect(missing).toEqual([]);
  });
});
