import { test } from 'vitest';
import { buildKind } from '/work/main/tests/support/flat-pieces.ts';
import { occupiesDeep } from '/work/main/tests/support/joinery-solid.ts';
import { spreadPoints } from '/work/main/tests/support/joinery-boxes.ts';
import { unplacePoint } from '#core/geometry';
test('x', () => {
  const b = buildKind('free-frame', {"corners":[575.5898479159492,916.8458301614844,575.8008547466429,483.0332460529137,950,699.9999999999999],"gap":0,"widths":[56,64,35,35,35,35,35],"thickness":15,"joint":"spline","through":"upright", materials:{frame:'oak'}});
  for (const p of spreadPoints(b.envelope.min,b.envelope.max,400)) { const t=b.parts.filter(q=>occupiesDeep(q,p)); if(t.length>1) console.log(p,t.map(q=>[q.id,unplacePoint(q.placements[0]!,p)])); }
  console.log(JSON.stringify(b.parts.map(p=>[p.id,p.name,p.finished,p.outline,p.machining,p.placements]),null,0));
});
