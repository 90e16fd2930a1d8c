export { loadGlpk } from './load-glpk.ts';
