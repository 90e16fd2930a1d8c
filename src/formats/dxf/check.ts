import type { Problem } from '#core/problems';
import { readEntities, readGroups } from './read.ts';
import type { Entity, Group } from './read.ts';

/**
 * What is wrong with a DXF text: broken pairs, a missing end, units other than mm, numbers that are none, polylines that are not
 * closed. Empty when nothing is. Source of the rules: published DXF reference of the format owner, R12 entities.
 */
export function checkDxf(text: string): readonly Problem[] {
  const { groups, broken } = readGroups(text);
  if (broken !== null) {
    return [
      stop(
        'dxf-broken',
        `Line ${broken} of the DXF file is not a pair of group code and value; the file is damaged or is not DXF.`,
        'Write the file again.',
      ),
    ];
  }
  const last = groups.at(-1);
  const ended = last?.code === 0 && last.value.trim() === 'EOF';
  const entities = readEntities(groups);
  return [
    ...(ended
      ? []
      : [
          stop(
            'dxf-cut-off',
            `The DXF file ends without EOF after ${groups.length} groups.`,
            'Write the file again.',
          ),
        ]),
    ...checkUnits(groups),
    ...groups.flatMap(checkNumber),
    ...(entities.length === 0
      ? [stop('dxf-empty', 'The DXF file holds no entities.', 'Check what was drawn.')]
      : []),
    ...entities.flatMap(checkEntity),
  ];
}

function stop(code: string, message: string, remedy: string): Problem {
  return { severity: 'stop', code, message, remedy };
}

function checkUnits(groups: readonly Group[]): readonly Problem[] {
  const at = groups.findIndex((g) => g.code === 9 && g.value.trim() === '$INSUNITS');
  const value = at < 0 ? null : (groups[at + 1]?.value.trim() ?? null);
  if (value === '4') return [];
  const found = value === null ? 'does not say its units' : `says units ${value}, not 4 (mm)`;
  return [
    {
      severity: 'warn',
      code: 'dxf-units',
      message: `The DXF file ${found}.`,
      remedy: 'Measure the 100 mm bar after reading it in.',
    },
  ];
}

// 10-59 and 210-239 hold numbers with decimals, 60-79 whole ones
function checkNumber(group: Group): readonly Problem[] {
  const { code, value, line } = group;
  const decimal = (code >= 10 && code <= 59) || (code >= 210 && code <= 239);
  const whole = code >= 60 && code <= 79;
  if (!decimal && !whole) return [];
  const good = decimal ? /^\s*[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?\s*$/ : /^\s*[-+]?\d+\s*$/;
  if (good.test(value)) return [];
  return [
    stop(
      'dxf-number',
      `Line ${line + 1} of the DXF file holds “${value.trim()}” where a number belongs (group ${code}).`,
      'Write the file again.',
    ),
  ];
}

const known = new Set(['LINE', 'ARC', 'CIRCLE', 'POLYLINE', 'TEXT', 'POINT']);
/** Where a line has two ends: it parts the two shapes of a blank. */
const lineLayer = 'SAW_BETWEEN';
const contourLayers = /^(POCKET|INNER|OUTLINE|REFERENCE|SCALE)_/;

function checkEntity(entity: Entity): readonly Problem[] {
  const { type, layer, line } = entity;
  if (!known.has(type)) {
    return [
      {
        severity: 'warn',
        code: 'dxf-entity',
        message: `Line ${line} of the DXF file begins a ${type}, which is none of ours.`,
      },
    ];
  }
  if (type === 'POLYLINE') return checkPolyline(entity);
  if ((type === 'LINE' || type === 'ARC') && contourLayers.test(layer)) {
    return [
      stop(
        'dxf-open',
        `On layer ${layer} (line ${line}) lies a loose ${type.toLowerCase()} where only closed contours belong.`,
        'Write the file again.',
      ),
    ];
  }
  return [];
}

function checkPolyline({ layer, line, groups, vertices }: Entity): readonly Problem[] {
  const flags = Number(groups.find((g) => g.code === 70)?.value ?? 0);
  const closed = (flags & 1) === 1;
  if ((closed || layer === lineLayer) && vertices.length >= 2) return [];
  const what = closed ? `has only ${vertices.length} corners` : 'is not closed';
  return [stop('dxf-open', `The contour on layer ${layer} (line ${line}) ${what}.`, 'Write the file again.')];
}
