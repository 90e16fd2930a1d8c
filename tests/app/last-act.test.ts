import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { leaveLastAct, takeLastAct } from '#app/last-act.ts';

beforeEach(() => {
  const kept = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
    removeItem: (key: string) => void kept.delete(key),
  });
});
afterEach(() => vi.unstubAllGlobals());

test('what was left at the close of the page is found once, by the project it belongs to', () => {
  leaveLastAct({ id: 'curlew', revision: 7, text: '{}' });
  expect(takeLastAct('another', 7)).toBeNull();
  expect(takeLastAct('curlew', 7)).toBe('{}');
  expect(takeLastAct('curlew', 7)).toBeNull();
});

test('what was left is dropped when the project went on since', () => {
  leaveLastAct({ id: 'curlew', revision: 7, text: '{}' });
  expect(takeLastAct('curlew', 8)).toBeNull();
  expect(takeLastAct('curlew', 7)).toBeNull();
});

test('a browser that refuses storage, or rubbish in it, is nothing left', () => {
  vi.stubGlobal('localStorage', {
    getItem: () => '{"id":',
    setItem: () => {
      throw new DOMException('full', 'QuotaExceededError');
    },
  });
  leaveLastAct({ id: 'curlew', revision: 7, text: '{}' });
  expect(takeLastAct('curlew', 7)).toBeNull();
});
