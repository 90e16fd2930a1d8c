import type { Problem } from '#core/problems';
import { markSize } from '#core/units';
import type { FrameLayout } from './layout.ts';
import { checkPlugged } from './plugged.ts';
import { leastBehindHousing, leastBeyondHousing, shortGrainRatio, thinnestWall } from '../rules.ts';
import type { Material } from '../piece-types.ts';

const show = markSize;

/** Findings on the strength of the corner joints (joinery B1.5, B1.10, C0.1 to C0.3, C6). */
export function checkJoints(layout: FrameLayout, material: Material): readonly Problem[] {
  return [
    ...checkWalls(layout),
    ...checkHousings(layout),
    ...checkTongue(layout),
    ...checkFlat(layout),
    ...checkPlugged(layout),
    ...checkEndGrain(layout),
    ...checkSheet(layout, material),
  ];
}

function checkWalls({ book, choices, jamb, head }: FrameLayout): readonly Problem[] {
  const wall = (name: string, thickness: number, depth: number): readonly Problem[] => {
    const left = thickness - depth;
    const least = Math.max(thinnestWall.hard, thickness * thinnestWall.share);
    if (left >= least) return [];
    return [
      {
        severity: 'stop',
        code: 'wall-too-thin',
        message: `The joint is ${show(depth)} deep in the ${show(thickness)} ${name}: ${show(left)} are left, ${show(least)} are needed.`,
        remedy: `Make the joint ${show(Math.max(0, thickness - least))} deep or less.`,
        source: 'joinery C0.2',
      },
    ];
  };
  const sill =
    choices.sill && !choices.flat ? wall('sill', choices.sillThickness, book.value('gt_sill')) : [];
  if (choices.over) return [...wall('head', book.value(head), choices.jointDepth), ...sill];
  if (choices.corner === 'housing-between')
    return [...wall('jamb', book.value(jamb), choices.jointDepth), ...sill];
  return sill;
}

function checkHousings({ book, choices, jamb }: FrameLayout): readonly Problem[] {
  const { corner, horn, jointDepth, infill } = choices;
  const findings: Problem[] = [];
  if (corner === 'housing-between') {
    const behind = book.value(jamb) - jointDepth;
    if (behind < leastBehindHousing) {
      findings.push({
        severity: 'warn',
        code: 'little-behind-housing',
        message: `The housing leaves ${show(behind)} of the jamb; ${show(leastBehindHousing)} should stay.`,
        remedy: `Make it ${show(Math.max(0, book.value(jamb) - leastBehindHousing))} deep, or the jamb thicker.`,
        source: 'joinery B1.5',
      });
    }
  }
  const housed = corner === 'housing-over' || (corner === 'housing-between' && !infill);
  if (!housed) return findings;
  const needed = Math.max(leastBeyondHousing, shortGrainRatio * jointDepth);
  if (horn < needed) {
    findings.push({
      severity: 'stop',
      code: 'short-grain',
      message: `Only ${show(horn)} of wood beyond the housing, ${show(jointDepth)} deep; the short grain breaks off below ${show(needed)}.`,
      remedy: `Leave ${show(needed)} beyond it, or use the rebate or tongue.`,
      source: 'joinery B1.10, C0.3',
    });
  }
  return findings;
}

function checkTongue({ choices, book, jamb }: FrameLayout): readonly Problem[] {
  const onSill = choices.sill && !choices.flat && choices.sillJoint === 'tongue';
  if (choices.corner !== 'tongue' && !onSill) return [];
  const outside = book.value(jamb) - choices.tongueThickness;
  if (outside >= leastBehindHousing) return [];
  return [
    {
      severity: 'stop',
      code: 'short-grain',
      message: `Only ${show(outside)} of wood stays outside the trench for the tongue; ${show(leastBehindHousing)} must.`,
      remedy: `Make the tongue ${show(Math.max(0, book.value(jamb) - leastBehindHousing))} thick or less.`,
      source: 'joinery B1, tongue',
    },
  ];
}

function checkFlat({ choices, book }: FrameLayout): readonly Problem[] {
  const thickness = book.value('Ld');
  const findings: Problem[] = [];
  if (choices.corner === 'half-lap' && thickness < 12) {
    findings.push({
      severity: 'warn',
      code: 'lap-thin',
      message: `A half-lap in ${show(thickness)} leaves ${show(thickness / 2)} each; from ${show(12)} it holds.`,
      remedy: 'Use another corner joint.',
      source: 'joinery C6',
    });
  }
  if (choices.corner === 'bridle' && thickness / 3 < thinnestWall.hard) {
    findings.push({
      severity: 'stop',
      code: 'wall-too-thin',
      message: `The cheeks of a bridle in ${show(thickness)} come out ${show(thickness / 3)}; ${show(thinnestWall.hard)} are needed.`,
      remedy: 'Use a half-lap, or a deeper frame.',
      source: 'joinery C0.2, C5',
    });
  }
  const narrow = Math.min(choices.jambThickness, choices.headThickness);
  if (choices.flat && narrow < 30) {
    findings.push({
      severity: 'warn',
      code: 'flat-frame-narrow',
      message: `A flat frame with members ${show(narrow)} wide has little wood in its corners.`,
      remedy: `Take ${show(30)} or more, or make a lining with a rebated corner.`,
      source: 'joinery C0, common practice',
    });
  }
  if (!choices.flat && Math.max(choices.jambThickness, choices.headThickness) > 30) {
    findings.push({
      severity: 'warn',
      code: 'lining-thick',
      message: `A lining is usually ${show(15)} to ${show(30)} thick; here ${show(Math.max(choices.jambThickness, choices.headThickness))}.`,
      remedy: 'Check that thickness and depth are not mixed up.',
      source: 'joinery B1',
    });
  }
  return findings;
}

function checkEndGrain({ choices, book, head }: FrameLayout): readonly Problem[] {
  const ends = ['rebate', 'housing-over', 'housing-between', 'butt'];
  if (!ends.includes(choices.corner)) return [];
  const into = choices.corner === 'rebate' || choices.corner === 'housing-over' ? 'jamb' : 'head';
  const bare = choices.corner === 'butt';
  return [
    {
      severity: bare ? 'warn' : 'note',
      code: 'screw-into-end-grain',
      message: `The corner screws go into the end grain of the ${into}, where they hold about three quarters of what they do across it${bare ? '; a butt joint has nothing else' : ''}.`,
      remedy: `Drive them ${show(45)} deep into it (ten times their diameter) and glue the joint with epoxy${bare ? ', only where it is covered' : ''}; pilot ${show(2.7)} for hard wood, ${show(2.1)} for soft. Head of the screw at least 2.5 diameters from an edge of the ${show(book.value(head))} head.`,
      source: 'joinery C0.1, C1, Wood Handbook',
    },
  ];
}

function checkSheet({ choices, book }: FrameLayout, material: Material): readonly Problem[] {
  if (material.kind !== 'sheet') return [];
  const wanted = choices.flat ? book.value('Ld') : choices.jambThickness;
  if (Math.abs(material.thickness - wanted) < 0.05) return [];
  return [
    {
      severity: 'stop',
      code: 'sheet-thickness',
      message: `${material.name} measures ${show(material.thickness)}; the frame is worked out for ${show(wanted)}.`,
      remedy: 'Enter the measured thickness of the sheet as that of the members.',
      source: 'joinery 0.6, G8',
    },
  ];
}
