import type { Problem } from '#core/problems';

import { claimShape } from './claim-shapes.ts';
import { claim, holds, refuse, type Claim } from './claims.ts';
import type { Project, SawProfile, StockLine } from './types.ts';

/** Values that no project can have: sizes of zero or less, negative prices and kerfs, shares above one, numbers that are none. */
export function checkValues(project: Project): readonly Problem[] {
  const claims = [
    ...project.shapes.flatMap((shape, index) => claimShape(shape, `shapes[${index}]`)),
    ...project.materials.flatMap((material, index) => claimMaterial(material, `materials[${index}]`)),
    ...project.stock.flatMap((line, index) => claimStock(line, `stock[${index}]`)),
    ...claimSettings(project),
    ...claimTools(project),
    ...(project.made ?? []).map((made, index) =>
      claim(`made[${index}].count`, `count cut of ${made.part}`, made.count, 'a whole number, zero or more'),
    ),
    ...(project.fixingPrices ?? []).map((fixing, index) =>
      claim(`fixingPrices[${index}].price`, `price of ${fixing.item}`, fixing.price, 'zero or more'),
    ),
  ];
  return [
    ...findNonNumbers(project, ''),
    ...claims.filter((each) => Number.isFinite(each.value) && !holds(each)).map(refuse),
    ...checkMoistureOrder(project),
    ...checkCurrency(project),
  ];
}

function claimMaterial(material: Project['materials'][number], path: string): readonly Claim[] {
  return [
    ...(material.kind === 'sheet'
      ? [claim(`${path}.thickness`, `thickness of ${material.name}`, material.thickness, 'above zero')]
      : []),
    ...(material.density === undefined
      ? []
      : [claim(`${path}.density`, `density of ${material.name}`, material.density, 'above zero')]),
  ];
}

function claimStock(line: StockLine, path: string): readonly Claim[] {
  const of = `of stock line "${line.id}"`;
  return [
    ...(['length', 'width', 'thickness'] as const).map((size) =>
      claim(`${path}.${size}`, `${size} ${of}`, line[size], 'above zero'),
    ),
    ...(line.price === undefined ? [] : [claim(`${path}.price`, `price ${of}`, line.price, 'zero or more')]),
    ...(line.count === null
      ? []
      : [claim(`${path}.count`, `count ${of}`, line.count, 'a whole number, zero or more')]),
    ...(line.keepOut ?? []).flatMap((area, index) =>
      (['length', 'width'] as const).map((size) =>
        claim(
          `${path}.keepOut[${index}].${size}`,
          `${size} of bad spot ${index + 1} ${of}`,
          area[size],
          'above zero',
        ),
      ),
    ),
  ];
}

function claimSettings({ settings }: Project): readonly Claim[] {
  return [
    claim('settings.film', 'finish film', settings.film, 'zero or more'),
    claim('settings.arris', 'arris', settings.arris, 'zero or more'),
    ...(['moistureNow', 'moistureLow', 'moistureHigh'] as const).map((key) =>
      claim(`settings.${key}`, key, settings[key], 'between 0 and 30'),
    ),
    ...(['coatsShown', 'coatsHidden'] as const).flatMap((key) => {
      const coats = settings[key];
      return coats === undefined
        ? []
        : [claim(`settings.${key}`, 'coats', coats, 'a whole number, zero or more')];
    }),
  ];
}

function claimTools({ tools }: Project): readonly Claim[] {
  return [
    ...claimSaw(tools.sheetSaw, 'tools.sheetSaw'),
    ...claimSaw(tools.boardSaw, 'tools.boardSaw'),
    claim('tools.router.cutter', 'router cutter', tools.router.cutter, 'between 0.1 and 100'),
    claim('tools.router.passDepth', 'depth of a router pass', tools.router.passDepth, 'between 0.1 and 100'),
    claim(
      'tools.keepLeftover.minLength',
      'length of leftovers kept',
      tools.keepLeftover.minLength,
      'zero or more',
    ),
    claim(
      'tools.keepLeftover.minWidth',
      'width of leftovers kept',
      tools.keepLeftover.minWidth,
      'zero or more',
    ),
  ];
}

function claimSaw(saw: SawProfile, path: string): readonly Claim[] {
  return [
    claim(`${path}.kerf`, `kerf of ${saw.name}`, saw.kerf, 'between 0 and 20'),
    ...Object.entries(saw.trim).map(([side, value]: [string, number]) =>
      claim(`${path}.trim.${side}`, `trim ${side} of ${saw.name}`, value, 'zero or more'),
    ),
  ];
}

/** Numbers that are none cannot come from a file; this guards against our own mistakes before they are saved. */
function findNonNumbers(value: unknown, path: string): readonly Problem[] {
  if (typeof value === 'number' && !Number.isFinite(value))
    return [
      {
        severity: 'stop',
        code: 'not-a-number',
        about: path,
        message: `The value at ${path} is not a number.`,
        remedy: 'Enter a number.',
      },
    ];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, child]) =>
    findNonNumbers(child, Array.isArray(value) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`),
  );
}

function checkMoistureOrder({ settings }: Project): readonly Problem[] {
  if (settings.moistureLow <= settings.moistureHigh) return [];
  return [
    {
      severity: 'stop',
      code: 'moisture-order',
      about: 'settings.moistureLow',
      message: `The least moisture aboard is ${settings.moistureLow} %, above the most of ${settings.moistureHigh} %.`,
      remedy: 'Exchange the two.',
    },
  ];
}

function checkCurrency({ currency }: Project): readonly Problem[] {
  if (/^[A-Z]{3}$/.test(currency)) return [];
  return [
    {
      severity: 'stop',
      code: 'currency-unfit',
      about: 'currency',
      message: `"${currency}" is not a currency code.`,
      remedy: 'Use the three capitals of ISO 4217, as EUR.',
      source: 'ISO 4217',
    },
  ];
}
