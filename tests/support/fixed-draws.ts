import fc from 'fast-check';

/** Continuous integration draws the same cases each time, so that it never fails by chance; elsewhere each run draws new ones. */
if (process.env.CI && process.env.CI !== '0' && process.env.CI !== 'false')
  fc.configureGlobal({ seed: 20261125 });
