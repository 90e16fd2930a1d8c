import type { PieceKind } from '#core/joinery';

import { openingTopics } from './opening-topics.ts';
import { roomTopics } from './room-topics.ts';
import type { Topic } from './topic.ts';

/** Rows of table A10, one for each kind of work. */
export const topics = { ...openingTopics, ...roomTopics };

export type TopicName = keyof typeof topics;

/** The row for each kind of piece; others are measured in general. */
const topicByKind: Readonly<Partial<Record<PieceKind, TopicName>>> = {
  'door-frame': 'door frame',
  'flat-door': 'door',
  'framed-door': 'door',
  'louvred-door': 'door',
  drawer: 'drawer',
  'cabinet-front': 'front',
  carcase: 'carcase',
  run: 'carcase',
  shelf: 'shelf',
  countertop: 'countertop',
  lids: 'lid',
  'trim-run': 'trim',
  infill: 'filler',
  step: 'step',
  'access-panel': 'access panel',
  dividers: 'tray',
  'hatch-surround': 'hatch',
  'curved-head': 'curved head',
};

/** What is to be measured for a kind of piece. Source: joinery A10. */
export function topicOf(kind: PieceKind): Topic {
  return topics[topicByKind[kind] ?? 'general'];
}
