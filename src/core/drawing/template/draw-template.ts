import type { Part } from '#core/joinery';
import type { Paper } from '../paper.ts';
import { formatSize } from '../scales.ts';
import type { Page } from '../types.ts';
import { drawFullSize } from './full-size.ts';
import { drawTemplateSheet } from './template-drawing.ts';
import { printNote } from './template-info.ts';
import type { TemplateInfo } from './template-info.ts';
import { drawTemplateLettering } from './template-lettering.ts';

/** Full-size paper template of a part, spread over as many pages as it takes. */
export function drawTemplate(part: Part, paper: Paper, info: TemplateInfo): readonly Page[] {
  const { length, width, thickness } = part.finished;
  const { units = 'mm' } = info;
  const size = [length, width, thickness].map((value) => formatSize(value, units)).join(' × ');
  return drawFullSize(
    {
      of: part.id,
      drawing: drawTemplateSheet(part, info.units),
      letter: (shows) => drawTemplateLettering(part, shows, info),
      rows: [
        `${part.id}  ${part.name}`,
        `${size}${units === 'mm' ? '' : ' in'} · make ${part.quantity} · ${info.job} · ${info.piece} · seen ${info.seenFrom} · face side up (${part.faceSide})`,
        printNote(units),
      ],
      ...(info.stamp !== undefined && { stamp: info.stamp }),
    },
    paper,
  );
}
