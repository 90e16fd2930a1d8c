export type { Drawing, Fill, Mark, Page, Pen } from './types.ts';
