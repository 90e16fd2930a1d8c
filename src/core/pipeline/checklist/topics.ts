import type { PieceKind } from '#core/joinery';

import { openingTopics } from './opening-topics.ts';
import { roomTopics } from './room-topics.ts';
import type { Topic } from './topic.ts';

/** Rows of table A10, one for each kind of work. */
export const topics = { ...openingTopics, ...roomTopics };

export type TopicName = keyof typeof topics;

/** The row for each kind of piece; others are measured in general. */
const topicByKind: Readonly<Partial<Record<PieceKind, TopicName>> & Record<string, TopicName>> = {
  'door-frame': 'door frame',
  'flat-door': 'door',
  'framed-door': 'door',
  'slatted-door': 'door',
  'louvred-door': 'door',
  'slatted-lining': 'door',
  drawer: 'drawer',
  'cabinet-front': 'front',
  'drawer-bank': 'front',
  carcase: 'carcase',
  shelf: 'shelf',
  countertop: 'countertop',
  lid: 'lid',
  lids: 'lid',
  'berth-lid': 'lid',
  'berth-lids': 'lid',
  trim: 'trim',
  'trim-run': 'trim',
  filler: 'filler',
  infill: 'filler',
  step: 'step',
  'box-step': 'step',
  'access-panel': 'access panel',
  tray: 'tray',
  trays: 'tray',
  dividers: 'tray',
  hatch: 'hatch',
  'hatch-surround': 'hatch',
  'curved-head': 'curved head',
  'laminated-head': 'curved head',
  'arched-head': 'curved head',
};

/** What is to be measured for a kind of piece. Source: joinery A10. */
export function topicOf(kind: PieceKind): Topic {
  return topics[topicByKind[kind] ?? 'general'];
}
