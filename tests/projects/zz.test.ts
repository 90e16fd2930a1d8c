import { readFileSync } from 'node:fs';
import { test } from 'vitest';
import { buildDrawer } from '../../src/core/joinery/drawer.ts';
import { buildDoorFrame } from '../../src/core/joinery/door-frame.ts';
import { adjustSurvey } from '#core/measuring';
test('x', () => {
  for (const f of ['static/projects/curlew', 'tests/projects/garden-cabin-inches', 'tests/projects/camper-cupboard', 'tests/projects/leaning-cottage']) {
    const p = JSON.parse(readFileSync(f + '.json', 'utf8'));
    for (const piece of p.pieces) {
      const s = p.shapes.find((x: any) => x.id === piece.shape);
      const shape = s ? adjustSurvey({seenFrom: s.seenFrom, readings: s.readings}).shape : null;
      const ctx: any = { shape, shapeName: s?.name, materials: p.materials, settings: p.settings };
      const b = piece.kind === 'drawer' ? buildDrawer(piece, ctx) : piece.kind === 'door-frame' ? buildDoorFrame(piece, ctx) : null;
      if (!b) continue;
      console.log(f, piece.name, '\n' + b.parts.map((x) => `${x.id} ${x.name} ×${x.quantity} ${x.material} fin ${x.finished.length.toFixed(1)}×${x.finished.width.toFixed(1)}×${x.finished.thickness} rough ${x.rough.length}×${x.rough.width}×${x.rough.thickness}`).join('\n') + '\n' + b.findings.map((x) => `!! ${x.severity} ${x.code} ${x.about}: ${x.message} -> ${x.remedy}`).join('\n'));
    }
  }
});
