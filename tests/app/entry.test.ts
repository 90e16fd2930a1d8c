import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseLength } from '#core/units';
import { padKeys, typeKey } from '#app/entry/typing.ts';

const typeAll = (keys: readonly string[]): string => keys.reduce(typeKey, '');

test('inches and a fraction typed on the pad are read as one length', () => {
  const text = typeAll(['3', '3', '1/8']);
  expect(text).toBe('33 1/8');
  // 1 in is 25.4 mm by definition (international yard and pound agreement, 1959)
  expect(parseLength(text, 'inch')).toMatchObject({ ok: true, value: 33.125 * 25.4 });
});

test('a second fraction takes the place of the first', () => {
  expect(typeAll(['3', '3', '1/8', '3/4'])).toBe('33 3/4');
});

test('half a millimetre is one key, and a second decimal point is not taken', () => {
  expect(typeAll(['6', '2', '7', '.5'])).toBe('627.5');
  expect(typeAll(['6', '.', '5', '.'])).toBe('6.5');
});

test('the sign of a lean can be changed back and forth', () => {
  expect(typeAll(['1', '4', 'sign'])).toBe('-14');
  expect(typeAll(['1', '4', 'sign', 'sign'])).toBe('14');
  expect(padKeys('mm', false).map((key) => key.type)).not.toContain('sign');
});

test('always: taking back as often as was typed leaves nothing', () => {
  const figures = fc.array(fc.constantFrom('0', '1', '5', '9'), { maxLength: 8 });
  fc.assert(
    fc.property(figures, (keys) => {
      const text = typeAll(keys);
      expect(keys.reduce((left) => typeKey(left, 'back'), text)).toBe('');
    }),
  );
});
