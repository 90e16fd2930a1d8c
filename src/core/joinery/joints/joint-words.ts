import type { Joint } from '../types.ts';

/** A joint as the trade says it: `loose tenon`. */
export function jointWords({ kind }: Pick<Joint, 'kind'>): string {
  return kind.replaceAll('-', ' ');
}
