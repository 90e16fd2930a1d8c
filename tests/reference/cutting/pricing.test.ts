import { expect, test } from 'vitest';
import { valuePattern } from '#core/cutting';

/**
 * Unlimited copies, fixed orientation, any number of guillotine stages: optima printed by Hifi & Zissimopoulos, EJOR 91
 * (1996) 553-564, as read at packlib (TU Braunschweig). Parts: length, width, value.
 */
const published: readonly (readonly [
  name: string,
  length: number,
  width: number,
  optimum: number,
  parts: number[][],
])[] = [
  [
    'H (Herz 1972)',
    127,
    98,
    12348,
    [
      [21, 13, 273],
      [36, 17, 612],
      [54, 20, 1080],
      [24, 27, 648],
      [18, 65, 1170],
    ],
  ],
  [
    'CGCUT1 (Christofides & Whitlock 1977)',
    15,
    10,
    249,
    [
      [8, 4, 66],
      [3, 7, 35],
      [8, 2, 24],
      [3, 4, 17],
      [3, 3, 11],
      [3, 2, 8],
      [2, 1, 2],
    ],
  ],
  [
    'CGCUT2',
    40,
    70,
    3076,
    [
      [21, 22, 582],
      [31, 13, 403],
      [9, 35, 315],
      [9, 24, 216],
      [30, 7, 210],
      [11, 13, 143],
      [10, 14, 140],
      [14, 8, 110],
      [12, 8, 94],
      [13, 7, 90],
    ],
  ],
  [
    'OF1 (Oliveira & Ferreira)',
    70,
    40,
    2758,
    [
      [29, 5, 145],
      [9, 39, 351],
      [55, 9, 495],
      [31, 15, 465],
      [11, 16, 176],
      [23, 21, 483],
      [29, 14, 406],
      [16, 19, 304],
      [9, 36, 324],
      [22, 4, 88],
    ],
  ],
  [
    'OF2',
    70,
    40,
    2776,
    [
      [22, 18, 396],
      [40, 10, 400],
      [13, 27, 351],
      [23, 18, 414],
      [29, 8, 232],
      [16, 4, 64],
      [47, 9, 423],
      [19, 19, 361],
      [13, 16, 208],
      [36, 16, 576],
    ],
  ],
];

test.each(published)('one sheet of %s (%i x %i) is worth %i', (_, length, width, optimum, parts) => {
  const valued = parts.map(([l = 0, w = 0, value = 0], i) => ({
    id: `p${i}`,
    length: l,
    width: w,
    value,
    turn: false,
  }));
  expect(valuePattern({ length, width }, valued)).toBe(optimum);
});

/** The third set of Christofides & Whitlock 1977, same source. */
test('one sheet of CGCUT3 (40 x 70) is worth 2240', () => {
  const parts = [
    [31, 43, 500],
    [30, 41, 480],
    [29, 39, 460],
    [28, 38, 440],
    [27, 37, 420],
    [26, 36, 410],
    [25, 35, 400],
    [24, 34, 380],
    [33, 23, 360],
    [22, 32, 340],
    [31, 21, 320],
    [29, 18, 300],
    [17, 27, 280],
    [15, 24, 240],
    [16, 25, 260],
    [23, 14, 220],
    [21, 12, 180],
    [19, 11, 160],
    [9, 17, 140],
  ].map(([length = 0, width = 0, value = 0], i) => ({ id: `p${i}`, length, width, value, turn: false }));
  expect(valuePattern({ length: 40, width: 70 }, parts)).toBe(2240);
});
