import type { GateAnswer } from '#core/fitting';
import type { Gate } from '#core/joinery';
import { unreachable } from '#core/problems';
import { formatLength, type LengthSystem } from '#core/units';

/** A gate to begin with, of a usual size. */
export function newGate(kind: Gate['kind'], id: string): Gate {
  switch (kind) {
    case 'opening':
      return { kind, id, name: 'Companionway', width: 600, height: 700, cornerRadius: 0 };
    case 'corner':
      return { kind, id, name: 'Turn below the hatch', before: 700, after: 600, depth: 600 };
    case 'space':
      return { kind, id, name: 'Saloon', length: 2000, width: 1500, height: 1900 };
    default:
      return unreachable(kind);
  }
}

/** One size of a gate as a field. */
export interface GateField {
  readonly key: string;
  readonly label: string;
  readonly value: number;
}

/** The sizes of a gate, in the order to ask them. */
export function gateFields(gate: Gate): readonly GateField[] {
  switch (gate.kind) {
    case 'opening':
      return [
        { key: 'width', label: 'Clear width', value: gate.width },
        { key: 'height', label: 'Clear height', value: gate.height },
        { key: 'cornerRadius', label: 'Corner radius', value: gate.cornerRadius ?? 0 },
      ];
    case 'corner':
      return [
        { key: 'before', label: 'Passage before the turn', value: gate.before },
        { key: 'after', label: 'Passage after the turn', value: gate.after },
        { key: 'depth', label: 'Size square to the turn', value: gate.depth },
      ];
    case 'space':
      return [
        { key: 'length', label: 'Length', value: gate.length },
        { key: 'width', label: 'Width', value: gate.width },
        { key: 'height', label: 'Headroom', value: gate.height },
      ];
    default:
      return unreachable(gate);
  }
}

/** How a piece takes a gate, as `passes, long end first`. */
export function gateAnswerWords({ passes, way, need, have }: GateAnswer, system: LengthSystem): string {
  if (passes) return `passes, ${way}`;
  const show = (value: number) =>
    formatLength(value, { system, step: system === 'mm' ? 1 : 1 / 8, unit: true });
  return need === undefined || have === undefined
    ? `does not pass as one`
    : `does not pass as one: ${way} it needs ${show(need)}, there are ${show(have)}`;
}
