import { unreachable } from '#core/problems';
import type { Material } from '../piece-types.ts';
import { jointAdvice, type JointKind } from './advice.ts';
import { workOutBoxJoint, workOutDovetailJoint, workOutLockRebate, workOutRebate } from './case-joints.ts';
import { workOutEdgeJoint, workOutGroove, workOutLipping, workOutTongueGroove } from './edge-joints.ts';
import { workOutCopeStick, workOutDowels, workOutLooseTenon, workOutTenon } from './end-joints.ts';
import type { FrameMember } from './frame.ts';
import { workOutBridle, workOutHalfLap } from './lapped-members.ts';
import { workOutMitreSpline, workOutScarf } from './sloped-joints.ts';
import { workOutButt, workOutHousing } from './standing-joints.ts';
import type { WorkedJoint } from './worked-joint.ts';

/** A joint of two members as one asks for it; what is left out is usual. mm. */
export interface JointRequest {
  readonly kind: JointKind | 'lock-rebate';
  /** The member with the projecting part: rail, shelf, side, tails. */
  readonly male: FrameMember;
  readonly other: FrameMember;
  /** Of the male member and of the other. */
  readonly materials: readonly [Material, Material];
  /** Middle of the male along the other; left out: half way. */
  readonly at?: number;
  /** Between the members, for laps, bridles and mitres. */
  readonly degrees?: number;
  readonly glue?: string;
  readonly load?: 'light' | 'heavy';
  readonly wet?: boolean;
}

/** Any joint of the rulebook's section C between two members, with what the table of suitability says of it. */
export function workOutJoint(request: JointRequest): WorkedJoint {
  const joint = frameJoint(request) ?? caseJoint(request);
  const { kind, materials, load, wet } = request;
  const advice = jointAdvice(kind === 'lock-rebate' ? 'rebate' : kind, {
    materials,
    ...(load && { load }),
    ...(wet !== undefined && { wet }),
  });
  const told = new Set(joint.findings.map(({ code }) => code));
  const isTold = ['dovetail-in-sheet', 'screw-into-end', 'lap-in-sheet'].some((code) => told.has(code));
  return { ...joint, findings: [...(isTold ? [] : advice), ...joint.findings] };
}

const isSheet = (material: Material) => material.kind === 'sheet';
const screw = 4; // mm, for furniture (joinery C1)
const cutter = 6; // mm (joinery 0.6)
const pins = { slope: 7, halfPin: 5, pin: 5 } as const; // joinery C12
const lap = 5; // mm of a front left before lapped dovetails (joinery C13)
const stick = 10; // mm, moulding and groove (joinery C18)
const scarfRatio = 8; // joinery C15

/** Joints of members of one thickness, an end on an edge; null for the others. */
function frameJoint(request: JointRequest): WorkedJoint | null {
  const { kind, male, other, glue, degrees, materials } = request;
  const meeting = { male, other, centre: request.at ?? other.length / 2 };
  const turned = degrees === undefined ? {} : { degrees };
  const glued = glue === undefined ? {} : { glue };
  switch (kind) {
    case 'dowel':
      return workOutDowels(meeting);
    case 'loose-tenon':
      return workOutLooseTenon(meeting, glue);
    case 'stub-tenon':
      return workOutTenon(meeting, { form: 'stub', ...glued });
    case 'through-tenon':
      return workOutTenon(meeting, { form: 'through', ...glued });
    case 'haunched-tenon':
      return workOutTenon(
        { male, other, centre: other.length - male.width / 2 },
        { form: 'haunched', ...glued },
      );
    case 'bridle':
      return workOutBridle(meeting, { ...turned, ...glued });
    case 'half-lap':
      return workOutHalfLap(meeting, { ...turned, sheet: materials.some(isSheet) });
    case 'cope-and-stick': {
      const T = male.thickness;
      return workOutCopeStick(meeting, { stick, step: T / 4, tongue: [T / 3, (2 * T) / 3] });
    }
    default:
      return null;
  }
}

type CaseKind = Exclude<
  JointRequest['kind'],
  | 'dowel'
  | 'loose-tenon'
  | 'stub-tenon'
  | 'through-tenon'
  | 'haunched-tenon'
  | 'bridle'
  | 'half-lap'
  | 'cope-and-stick'
>;

/** Joints on faces, corners and edges. */
function caseJoint(request: JointRequest): WorkedJoint {
  const { male, other, degrees, materials } = request;
  const [ours, theirs] = materials;
  const at = request.at ?? other.length / 2;
  const standing = { male, other, ...(request.glue !== undefined && { glue: request.glue }) };
  const kind = request.kind as CaseKind; // the others have been answered
  switch (kind) {
    case 'butt':
      return workOutButt(standing, {
        ...{ at, diameter: screw, grain: isSheet(ours) ? 'side' : 'end', hard: true, sheet: isSheet(ours) },
      });
    case 'housing':
      return workOutHousing(standing, { at, stopped: 10, cutter });
    case 'rebate':
      return workOutRebate(standing);
    case 'lock-rebate':
      return workOutLockRebate(standing, { sheet: isSheet(theirs) });
    case 'box':
      return workOutBoxJoint(standing);
    case 'through-dovetail':
    case 'lapped-dovetail':
      return workOutDovetailJoint(standing, {
        ...{ ...pins, sheet: materials.some(isSheet) },
        ...(kind === 'lapped-dovetail' && { lap }),
      });
    case 'groove':
      return workOutGroove({ panel: male.thickness, other });
    case 'tongue-and-groove':
      return workOutTongueGroove(standing);
    case 'mitre-and-spline':
      return workOutMitreSpline(male, degrees === undefined ? {} : { degrees });
    case 'scarf':
      return workOutScarf(standing, scarfRatio);
    case 'edge-joint':
      return workOutEdgeJoint(male.width + other.width, 2);
    case 'lipping':
      return workOutLipping(other.width, { thickness: other.thickness, lipping: male.thickness, sides: 2 });
    default:
      return unreachable(kind);
  }
}
