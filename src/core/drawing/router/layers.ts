import { unreachable } from '#core/problems';

/** What is done along a contour; the order here is the order of work (joinery E7: drill, pockets, inner contours, outline). */
export type Operation =
  'drill' | 'sink' | 'pocket' | 'inner' | 'outline' | 'reference' | 'between' | 'scale' | 'note';

/** The layers of a router file. Names are plain ASCII; `nn_nn` is a depth or diameter in mm with two decimals. */
export const routerLayers: readonly {
  readonly layer: string;
  readonly holds: string;
  readonly cut: boolean;
}[] = [
  { layer: 'DRILL_Dnn_nn', holds: 'holes, as circles, nn.nn mm deep', cut: true },
  { layer: 'DRILL_THROUGH', holds: 'holes right through, as circles', cut: true },
  { layer: 'SINK_OPEN_nn_nn', holds: 'countersinks, as circles of their open diameter', cut: true },
  {
    layer: 'POCKET_Dnn_nn',
    holds: 'closed contours to clear to nn.nn mm below the side that lies up',
    cut: true,
  },
  { layer: 'INNER_THROUGH', holds: 'openings right through; keep the cutter inside the line', cut: true },
  { layer: 'OUTLINE_THROUGH', holds: 'the part itself; keep the cutter outside the line', cut: true },
  {
    layer: 'REFERENCE_OUTLINE',
    holds: 'where the part or its finished edge lies; not to be cut',
    cut: false,
  },
  {
    layer: 'SAW_BETWEEN',
    holds: 'where two shapes in one blank are parted by saw or jigsaw, middle of the kerf; not to be routed',
    cut: false,
  },
  { layer: 'SCALE_100MM', holds: 'a bar exactly 100 mm long; not to be cut', cut: false },
  { layer: 'NOTE_ADDRESS', holds: 'address of the part; not to be cut', cut: false },
  { layer: 'NOTE_TEXT', holds: 'units, side, thickness, cutter and passes; not to be cut', cut: false },
];

/** Layer of an operation; depth (or open diameter of a countersink) in mm, `through` for right through. */
export function layerName(operation: Operation, size: number | 'through' = 'through'): string {
  switch (operation) {
    case 'drill':
      return size === 'through' ? 'DRILL_THROUGH' : `DRILL_D${digits(size)}`;
    case 'sink':
      return `SINK_OPEN_${size === 'through' ? '00_00' : digits(size)}`;
    case 'pocket':
      return size === 'through' ? 'INNER_THROUGH' : `POCKET_D${digits(size)}`;
    case 'inner':
      return 'INNER_THROUGH';
    case 'outline':
      return 'OUTLINE_THROUGH';
    case 'reference':
      return 'REFERENCE_OUTLINE';
    case 'between':
      return 'SAW_BETWEEN';
    case 'scale':
      return 'SCALE_100MM';
    case 'note':
      return 'NOTE_TEXT';
    default:
      return unreachable(operation);
  }
}

// 6.5 gives 06_50
function digits(size: number): string {
  return size.toFixed(2).padStart(5, '0').replace('.', '_');
}

/** Colour number of a layer in the DXF palette (published reference of the format: 1 red, 3 green, 5 blue, 6 magenta, 7 ink, 8 grey). */
export function layerColour(layer: string): number {
  if (layer.startsWith('DRILL')) return 3;
  if (layer.startsWith('SINK')) return 6;
  if (layer.startsWith('POCKET')) return 5;
  if (layer.startsWith('INNER')) return 1;
  return layer.startsWith('OUTLINE') ? 7 : 8;
}
