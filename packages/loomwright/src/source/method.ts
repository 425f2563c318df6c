import type { Source } from './type.js';

/** Sources on units and numerical methods. */
export const methodSources = {
  'nist-sp-811': {
    title: 'NIST Special Publication 811, Guide for the Use of the International System of Units, appendix B',
    publisher: 'US National Institute of Standards and Technology',
    edition: '2008',
    status: 'published',
  },
  'chandrupatla-1997': {
    title: 'Chandrupatla, a new hybrid quadratic/bisection algorithm for finding the zero of a nonlinear function',
    publisher: 'Advances in Engineering Software 28, 145–149',
    edition: '1997',
    status: 'published',
    note: 'Form of the interpolation test from memory; the answers are checked against closed forms.',
  },
} as const satisfies Record<string, Source>;
