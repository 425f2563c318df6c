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
  'slatec-pchip': {
    title: 'SLATEC library, quick checks of the piecewise cubic Hermite package',
    publisher: 'public domain; as carried in a current Fortran edition',
    status: 'published',
  },
  'ayer-1955': {
    title:
      'Ayer, Brunk, Ewing, Reid and Silverman, an empirical distribution function for sampling with incomplete information',
    publisher: 'Annals of Mathematical Statistics 26, 641–647',
    edition: '1955',
    status: 'memory',
    note: 'Pooling of adjacent violators, from memory; the answers are checked against the optimum of the quadratic.',
  },
  'akima-1970': {
    title: 'Akima, A new method of interpolation and smooth curve fitting based on local procedures',
    publisher: 'Journal of the ACM 17, 589–602',
    edition: '1970',
    status: 'memory',
    note: 'A printed set of values as carried in the tests of a numerical package; the data of the paper from memory.',
  },
  'young-gregory-1972': {
    title: 'Young and Gregory, A Survey of Numerical Mathematics, volume 1, chapter 6.8',
    publisher: 'Addison-Wesley',
    edition: '1972',
    status: 'published',
    note: 'Values of the natural spline of 1/(1+x²) as carried in the tests of a numerical library.',
  },
  'amestoy-davis-duff-1996': {
    title: 'Amestoy, Davis and Duff, An approximate minimum degree ordering algorithm',
    publisher: 'SIAM Journal on Matrix Analysis and Applications 17, 886–905',
    edition: '1996',
    status: 'memory',
    note: 'The method from memory; what its order leaves in a factor is checked against exact minimum degree, done plainly.',
  },
  'liu-1990': {
    title: 'Liu, The role of elimination trees in sparse factorization',
    publisher: 'SIAM Journal on Matrix Analysis and Applications 11, 134–172',
    edition: '1990',
    status: 'memory',
    note: 'Rows of a factor from the tree, from memory; solutions are checked against elimination of the full matrix.',
  },
} as const satisfies Record<string, Source>;
