import { unreachable } from '#core/problems';
import { cabinetFrontParameters } from './cabinet-front-parameters.ts';
import { doorFrameParameters } from './door-frame-parameters.ts';
import { drawerParameters } from './drawer-parameters.ts';
import { flatDoorParameters } from './flat-door-parameters.ts';
import type { ParameterInfo, PieceKind } from './piece-types.ts';

/** What can be chosen for a kind of piece, with label, default and limits, in the order to ask it. */
export function parametersOf(kind: PieceKind): readonly ParameterInfo[] {
  switch (kind) {
    case 'door-frame':
      return doorFrameParameters;
    case 'drawer':
      return drawerParameters;
    case 'cabinet-front':
      return cabinetFrontParameters;
    case 'flat-door':
      return flatDoorParameters;
    default:
      return unreachable(kind);
  }
}
