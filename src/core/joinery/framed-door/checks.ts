import type { Problem } from '#core/problems';
import { formatNumber, markSize } from '#core/units';
import { isLapped, isPlugged, type FramedLayout } from './sizes.ts';
import { lockSite } from './lock-site.ts';
import { checkHanging } from '../hung-door/checks.ts';
import { checkLock } from '../hung-door/lock-checks.ts';
import { checkMoisture, checkWall, checkWideSolid, openFindings, type Say } from '../piece-findings.ts';
import type { JoinerySettings } from '../piece-types.ts';
import type { Part } from '../types.ts';

const show = markSize;

const leastEngaged = 4; // panel in its groove in the dry, mm (joinery B3)
const widestPanel = 350; // of solid timber, mm (joinery B3.4)
const widestRow = 600; // door without a mid stile, mm (joinery B3.5)
const leastHaunched = 40; // rail with a haunched tenon, mm (joinery B3.3)
const leastLap = 12; // thickness for a half-lap, mm (joinery C6)
const leastTenon = 25; // reach of a mortise and tenon, mm (joinery B3)

/** Findings on the form of a framed door (joinery B3.1 to B3.6, C0.2, C4, D2, D3, G13). */
export function checkFramed(
  layout: FramedLayout,
  parts: readonly Part[],
  settings: JoinerySettings,
): readonly Problem[] {
  const { say, all } = openFindings();
  checkHanging(say, layout.book, layout.choices);
  checkLock(say, layout.book, layout.choices, lockSite(layout));
  checkTenons(say, layout);
  checkRails(say, layout);
  checkPanel(say, layout);
  checkSwelling(say, layout);
  checkMoisture(say, settings, true);
  checkWideSolid(
    say,
    parts.filter((part) => part.name !== 'Panel'),
  );
  return all();
}

const tongued = ({ choices: { joint } }: FramedLayout) =>
  joint === 'groove-tongue' || joint === 'scribed-moulding';

function checkTenons(say: Say, layout: FramedLayout): void {
  const { book, choices } = layout;
  const v = book.value;
  const [t, T] = [v('tenon_t'), v('T')];
  if (t < T / 4 - 1e-9 || t > T / 2 + 1e-9) {
    say('warn', 'tenon-thickness', {
      message: `The tenon is ${show(t)} thick in a frame of ${show(T)}; between ${show(T / 4)} and ${show(T / 2)} it and its mortise are sound.`,
      remedy:
        t < T / 4
          ? 'Take a thicker panel edge or a thinner frame.'
          : 'Take a thicker frame or a thinner panel edge.',
      source: 'joinery B3.1, C4',
    });
  }
  checkWall(say, 'Stile beside the groove or mortise', (T - Math.max(t, v('gw'))) / 2, T);
  if (tongued(layout)) {
    const area = (v('Wd') * v('Hd')) / 1e6;
    if (area <= 0.25) return;
    say('warn', 'door-large-for-tongues', {
      message: `The door is ${formatNumber(area, 2)} m² and held by tongues ${show(v('gd'))} long; over 0.25 m² they rack loose.`,
      remedy: 'Choose a mortise and tenon, or add loose tenons.',
      source: 'joinery B3, C18',
    });
    return;
  }
  if (choices.joint === 'half-lap') checkLap(say, T);
  if (choices.joint === 'dowel') checkDowels(say, layout);
  if (isLapped(choices.joint) && layout.rails + layout.stiles === 0) return;
  if (v('reach') < leastTenon && !isPlugged(choices.joint) && !isLapped(choices.joint)) {
    say('warn', 'tenon-short', {
      message: `The tenons reach ${show(v('reach'))} into the stiles; ${show(leastTenon)} is the least.`,
      remedy: `Make them ${show(leastTenon)} or more, or the stiles wider.`,
      source: 'joinery B3',
    });
  }
  if (choices.joint === 'through-tenon') return;
  const behind =
    v('ws') - v('reach') - (choices.joint === 'loose-tenon' ? 0 : choices.joint === 'dowel' ? 1 : 1.5);
  checkWall(say, 'Stile behind the mortise', behind, T);
}

/** C6: thin wood leaves little in a lap. */
function checkLap(say: Say, thickness: number): void {
  if (thickness >= leastLap) return;
  say('warn', 'lap-thin', {
    message: `A half-lap in a frame of ${show(thickness)} leaves ${show(thickness / 2)} of each; ${show(leastLap)} is the least thickness.`,
    remedy: 'Take a thicker frame, or a tongue in the groove.',
    source: 'joinery C6',
  });
}

/** C2: two dowels need room beside each other, between the outer edge and the groove. */
function checkDowels(say: Say, { book, rails, stiles }: FramedLayout): void {
  const v = book.value;
  const names = ['top', 'bottom', ...(rails > 0 ? ['mid'] : []), ...(stiles > 0 ? ['stile'] : [])];
  const least = 2 * v('tenon_t');
  const tight = Math.min(...names.map((name) => v(`tenon_b_${name}`)));
  if (tight >= least - 1e-9) return;
  say('warn', 'dowels-crowded', {
    message: `Two dowels of ${show(v('tenon_t'))} stand ${show(tight)} apart in a rail, between its edge and the groove; ${show(least)} is the least.`,
    remedy: 'Make the rails wider, or take a loose tenon.',
    source: 'joinery C2',
  });
}

function checkRails(say: Say, { book, choices }: FramedLayout): void {
  const v = book.value;
  const haunched = choices.joint === 'haunched-tenon' || choices.joint === 'through-tenon';
  const narrow = Math.min(v('wt'), v('wb'));
  if (haunched && narrow < leastHaunched) {
    say('warn', 'rail-narrow-for-haunch', {
      message: `A rail of ${show(narrow)} with a haunched tenon leaves a tenon ${show(narrow - Math.max(v('gd'), narrow / 3) - v('gd'))} wide; ${show(leastHaunched)} is the least width.`,
      remedy: `Make the rail ${show(leastHaunched)} or more, or choose a bridle.`,
      source: 'joinery B3.3',
    });
  }
  if (v('wb') < v('wt')) {
    say('warn', 'bottom-rail-narrow', {
      message: `The bottom rail is ${show(v('wb'))}, narrower than the top rail of ${show(v('wt'))}: the door looks top-heavy.`,
      remedy: `Make it ${show(v('wt'))} or more.`,
      source: 'joinery B3',
    });
  }
  if (v('gd') > v('ws') / 4 + 1e-9) {
    say('warn', 'groove-deep', {
      message: `The groove is ${show(v('gd'))} deep in a stile of ${show(v('ws'))}; a quarter, ${show(v('ws') / 4)}, is the most.`,
      remedy: `Make it ${show(Math.floor(v('ws') / 4))} or less, or the stiles wider.`,
      source: 'joinery B3',
    });
  }
}

function checkPanel(say: Say, { book, choices, stiles }: FramedLayout): void {
  const v = book.value;
  const solid = choices.stock.panel.kind === 'solid';
  if (solid && v('Wp') > widestPanel) {
    say('warn', 'panel-too-wide', {
      message: `A solid panel ${show(v('Wp'))} wide moves ${show(v('swell') + v('shrink'))} between dry and wet; over ${show(widestPanel)} it is trouble.`,
      remedy: 'Put in a mid stile, or take a sheet for the panel.',
      source: 'joinery B3.4',
    });
  }
  if (v('Wd') > widestRow && stiles === 0) {
    say('warn', 'mid-stile-wanted', {
      message: `The door is ${show(v('Wd'))} wide without a mid stile; over ${show(widestRow)} the rails bend and the panel drums.`,
      remedy: 'Put in a mid stile.',
      source: 'joinery B3.5',
    });
  }
  if (v('panel_z') < 0) {
    say('warn', 'panel-proud', {
      message: `The panel of ${show(v('tp'))} stands ${show(-v('panel_z'))} proud of the face of the frame.`,
      remedy: 'Take a thinner panel or a thicker frame.',
      source: 'joinery B3',
    });
  }
  if (solid && choices.panelGlued) {
    say('stop', 'panel-glued', {
      message: `The solid panel is to be glued in, but will move ${show(v('swell') + v('shrink'))} across: it splits, or bursts the frame.`,
      remedy: 'Leave it loose; one dab of glue in the middle of its top and bottom edge keeps it central.',
      source: 'joinery B3.6, G13',
    });
  }
}

function checkSwelling(say: Say, { book, choices }: FramedLayout): void {
  const v = book.value;
  const room = 2 * v('gp');
  if (v('swell') > room + 1e-9) {
    say('stop', 'panel-swells', {
      message: `The panel will swell ${show(v('swell'))}; the groove leaves ${show(room)}.`,
      remedy: `Leave ${show(Math.ceil(v('swell') + 1) / 2)} at each side, or leave the room out to have it worked out.`,
      source: 'joinery B3, G13',
    });
  }
  if (v('engage_dry') >= leastEngaged - 1e-9) return;
  const deeper = Math.ceil(v('gd') + leastEngaged - v('engage_dry'));
  say(v('engage_dry') <= 0 ? 'stop' : 'warn', 'panel-slips-out', {
    message: `In the dry the panel is ${show(v('engage_dry'))} in its groove; ${show(leastEngaged)} is the least.`,
    remedy: `Make the groove ${deeper} deep${choices.stock.panel.kind === 'solid' ? ', or take a sheet for the panel' : ''}.`,
    source: 'joinery B3.2',
  });
}
