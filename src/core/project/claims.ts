import type { Problem } from '#core/problems';

/** 20 mm: no saw blade is thicker. 0.1 mm: no router pass is shallower, and none deeper than 100. */
type Rule =
  | 'above zero'
  | 'zero or more'
  | 'a whole number, zero or more'
  | 'between 0 and 1'
  | 'between 0 and 20'
  | 'between 0 and 30'
  | 'between 0.1 and 100'
  | 'more than 0 and less than 360'
  | 'between -89 and 89';

/** One value, where it stands, what it is called and what it must be. */
export interface Claim {
  readonly about: string;
  readonly label: string;
  readonly value: number;
  readonly rule: Rule;
}

/** One claim on a value. */
export function claim(about: string, label: string, value: number, rule: Rule): Claim {
  return { about, label, value, rule };
}

/** Whether a value is what it must be; a number that is none is not. */
export function holds({ value, rule }: Claim): boolean {
  switch (rule) {
    case 'above zero':
      return value > 0;
    case 'zero or more':
      return value >= 0;
    case 'a whole number, zero or more':
      return value >= 0 && Number.isInteger(value);
    case 'between 0 and 1':
      return value >= 0 && value <= 1;
    case 'between 0 and 20':
      return value >= 0 && value <= 20;
    case 'between 0 and 30':
      return value >= 0 && value <= 30;
    case 'between 0.1 and 100':
      return value >= 0.1 && value <= 100;
    case 'more than 0 and less than 360':
      return value > 0 && value < 360;
    case 'between -89 and 89':
      return value >= -89 && value <= 89;
  }
}

/** The finding on a value that is not what it must be. */
export function refuse({ about, label, value, rule }: Claim): Problem {
  return {
    severity: 'stop',
    code: 'value-out-of-range',
    about,
    message: `The ${label} is ${value}; it must be ${rule}.`,
    remedy: 'Enter the value that was measured or agreed.',
  };
}
