import { defaultSettings } from '#core/joinery';

import { defaultTools } from './defaults.ts';
import type { Project } from './types.ts';

/** The version of the saved document this program writes. */
export const projectVersion = 1;

/** An empty project with the trade's defaults: mm, A4, euros with tax. */
export function newProject(name: string): Project {
  return {
    version: projectVersion,
    name,
    currency: 'EUR',
    pricesIncludeTax: true,
    paper: 'A4',
    units: 'mm',
    settings: { ...defaultSettings, spares: 'boards' },
    shapes: [],
    pieces: [],
    materials: [],
    stock: [],
    tools: defaultTools,
    done: [],
  };
}
