import type { Problem, Severity } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import { leastFinishedGap, moistureStep, thinnestWall } from './rules.ts';
import type { JoinerySettings, Material, ParameterInfo } from './piece-types.ts';
import type { Part } from './types.ts';

/** One finding in order: severity, code, message, remedy, source. */
export type Say = (
  severity: Severity,
  code: string,
  text: {
    readonly message: string;
    readonly remedy: string;
    readonly source: string;
    readonly about?: string;
  },
) => void;

/** Collects findings. */
export function openFindings(): { readonly say: Say; readonly all: () => readonly Problem[] } {
  const findings: Problem[] = [];
  return {
    say: (severity, code, text) => findings.push({ severity, code, ...text }),
    all: () => findings,
  };
}

/** Widest solid part kept flat unjointed, mm (joinery D3). */
const widestSolid = 120;

/** Walls left by a joint that are too thin (joinery C0.2). */
export function checkWall(say: Say, where: string, left: number, thickness: number): void {
  const least = Math.max(thinnestWall.hard, thickness * thinnestWall.share);
  if (left >= least - 1e-9) return;
  say('stop', 'wall-too-thin', {
    message: `${where}: ${markSize(left)} of wood is left; it needs ${markSize(least)}.`,
    remedy: 'Cut less deep, or take thicker wood.',
    source: 'joinery C0.2, G21',
  });
}

/** A gap round what is taken out that its films leave too little of (joinery 0.7, G6). */
export function checkFilms(say: Say, what: string, gap: number, { film }: JoinerySettings): void {
  const left = gap - 2 * film;
  if (left >= leastFinishedGap - 1e-9) return;
  say('stop', 'no-room-once-finished', {
    message: `No room to take ${what} out once varnished: gap ${markSize(gap)}, films ${markSize(2 * film)}, left ${markSize(left)} of ${markSize(leastFinishedGap)}.`,
    remedy: `Make the gap ${markSize(leastFinishedGap + 2 * film)} or more.`,
    source: 'joinery 0.7, G6',
  });
}

/** Solid parts wider than stays flat (joinery D3). */
export function checkWideSolid(say: Say, parts: readonly Part[]): void {
  for (const part of parts) {
    if (part.kind !== 'solid' || part.finished.width <= widestSolid) continue;
    say('warn', 'solid-too-wide', {
      about: part.id,
      message: `${part.name} is ${markSize(part.finished.width)} wide in solid timber; over ${markSize(widestSolid)} it will not stay flat in one board.`,
      remedy: 'Joint it from narrower boards, use quarter-sawn timber, or a sheet.',
      source: 'joinery D3',
    });
  }
}

/** How much stiffer wood is along its grain than across: plywood as in joinery B8, solid timber about 15 (from memory). */
const stifferAlong = { sheet: 7000 / 4000, solid: 15 } as const;

/** Parts whose grain runs the short way (joinery D3, G12): X is along the grain. A sheet may do so for its looks: its limit is common practice. */
export function checkCrossGrain(say: Say, parts: readonly Part[]): void {
  for (const part of parts) {
    const { length, width } = part.finished;
    const [limit, widest] = part.kind === 'solid' ? [1.5, 150] : [2.5, Infinity];
    const short = width > limit * length || (width > length && width > widest);
    if (!short || part.grain === 'any') continue;
    const times = formatNumber(stifferAlong[part.kind]);
    say(part.kind === 'solid' ? 'warn' : 'note', 'grain-across', {
      about: part.id,
      message: `Turn ${part.name}: its grain runs over the short side, ${markSize(length)}, and over its ${markSize(width)} it is ${times} × less stiff${part.kind === 'solid' ? ', and will warp and break' : ''}.`,
      remedy:
        part.kind === 'solid'
          ? 'Turn the grain the long way, or use a sheet.'
          : 'Turn the grain the long way if it carries anything; for its looks alone it may stay.',
      source: 'joinery D3, G12',
    });
  }
}

/** A thickness entered that is not the one measured on the sheet (joinery G8). */
export function checkSheetThickness(say: Say, material: Material, thickness: number, what: string): void {
  if (material.kind !== 'sheet' || Math.abs(material.thickness - thickness) <= 0.05) return;
  say('warn', 'sheet-thickness-differs', {
    message: `${what}: ${markSize(thickness, 2)} thick entered, but ${material.name} measures ${markSize(material.thickness, 2)}.`,
    remedy: 'Leave the thickness out to take the measured one, or choose another sheet.',
    source: 'joinery 0.6, G8',
  });
}

/** Timber that will move between workshop and boat (joinery D2, G). */
export function checkMoisture(say: Say, settings: JoinerySettings, solid: boolean): void {
  const aboard = (settings.moistureLow + settings.moistureHigh) / 2;
  const off = settings.moistureNow - aboard;
  if (!solid || Math.abs(off) <= moistureStep) return;
  say('warn', 'timber-moisture', {
    message: `The timber is at ${formatNumber(settings.moistureNow)} % in the workshop and will go to about ${formatNumber(aboard)} % aboard: it will ${off < 0 ? 'swell' : 'shrink'}.`,
    remedy: 'Let it lie aboard for some weeks before the last fitting, or leave wider gaps.',
    source: 'joinery D2',
  });
}

/** No piece of furniture aboard is longer, mm: a number beyond it is a slip of the unit. */
const longest = 10_000;

/** Lengths that can be no size of furniture: they are asked for again, not built. */
export function checkExtent(
  parameters: object,
  infos: readonly ParameterInfo[],
  about: string,
): readonly Problem[] {
  const given = parameters as Readonly<Record<string, unknown>>;
  return infos.flatMap((info) => {
    const value = given[info.key];
    if (info.type !== 'length' || typeof value !== 'number' || !(value > longest)) return [];
    return [
      {
        severity: 'stop' as const,
        code: 'parameter-unusable',
        about,
        message: `${info.label}: ${value} mm is more than ${markSize(longest / 1000)} m.`,
        remedy: 'Check the unit.',
      },
    ];
  });
}
