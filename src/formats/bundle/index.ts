export type { BundleSource } from './bundle-context.ts';
export { makeBundle } from './write-bundle.ts';
export type { Bundle } from './write-bundle.ts';
export { drawPages } from './draw-pages.ts';
export type { PageSets } from './draw-pages.ts';
export { writeRouterFiles } from './router-files.ts';
export type { RouterFiles } from './router-files.ts';
